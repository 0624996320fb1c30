/** The row of links to a true-size template, on each paper that a printer may hold and for a cutting machine. */
import type { FC } from 'hono/jsx';
import { PAPERS } from '#core/drawing/tiling.ts';

interface Linked {
  /** Where its files are, such as `/templates/projects/7`. */
  readonly at: string;
  readonly query?: Readonly<Record<string, string>>;
}

export const TemplateLinks: FC<Linked> = ({ at, query = {} }) => {
  const pairs = new URLSearchParams(Object.entries(query).filter(([, value]) => value !== ''));
  const asked = pairs.size > 0 ? `?${pairs}` : '';
  return (
    <p class="no-print">
      True-size template:{' '}
      {Object.entries(PAPERS).map(([paper, { name }]) => (
        <>
          <a href={`${at}/${paper}.pdf${asked}`}>{name}</a> ·{' '}
        </>
      ))}
      <a href={`${at}/template.svg${asked}`}>SVG</a> for a cutting machine
    </p>
  );
};
