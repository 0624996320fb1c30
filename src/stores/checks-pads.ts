/** The pads' invariants: sheets measure about what they are sold by, and their strip leaves paper. Reads rows only. */
import { type Length, length } from '#shared/length.ts';
import type { Database } from './database.ts';

export async function checkPads(db: Database): Promise<string[]> {
  const rows = await db.selectFrom('pads').selectAll().execute();
  return rows.flatMap(({ id, width, height, measured_width, measured_height, strip_edge, strip_depth }) => {
    const upright = strip_edge === 'left' || strip_edge === 'right';
    const side = upright ? (measured_width ?? width) : (measured_height ?? height);
    return [
      ...farOff('width', id, width, measured_width),
      ...farOff('height', id, height, measured_height),
      ...((strip_depth ?? length(0)) < side ? [] : [`the strip of pad ${id} leaves no paper`]),
    ];
  });
}

const farOff = (side: string, pad: number, sold: Length, measured: Length | null): string[] =>
  measured === null || Math.abs(measured - sold) * 10 <= sold
    ? []
    : [`the ${side} of pad ${pad} is measured far off the size it is sold by`];
