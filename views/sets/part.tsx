/** One part of a set: drawn to scale, what to cut and where to score, what to mind. Works nothing out. */
import type { FC } from 'hono/jsx';
import { type DrawnPart, partDrawing, partScale } from '#core/drawing/part.ts';
import { printExact, printExactSize, typedLength, type Units } from '#shared/length.ts';
import { Picture } from '../diagrams/picture.tsx';

interface Props {
  readonly part: DrawnPart;
  /** Its number in the form that adds parts to an order. */
  readonly number: number;
  /** On a page of its own, where it is meant to be cut. */
  readonly alone: boolean;
  readonly units: Units;
}

export const PartShown: FC<Props> = ({ part, number, alone, units }) => (
  <article class="set-part">
    <figure class="sheet">
      <Picture drawing={partDrawing(part, units, partScale(part, TALLEST))} id={`part-${number}`} />
    </figure>
    <div>
      {alone ? <h2>{part.name}</h2> : <h3>{part.name}</h3>}
      <p class="lead">
        {part.copies === 1 ? 'Cut' : `Cut ${part.copies} of`} <strong>{printExactSize(part, units)}</strong>{' '}
        {FROM[part.material]}.
      </p>
      {part.scores.length === 0 ? null : <p>{sayScores(part, units)}</p>}
      {part.notchAt === undefined ? null : (
        <p>
          Notches <strong>{printExact(part.notchAt, units)}</strong> in, to their middle.
        </p>
      )}
      {notesOn(part, alone).map((note) => (
        <p class={note === part.opening?.words && part.opening.tiesShut ? 'caution' : 'quiet'}>{note}</p>
      ))}
      {part.material === 'ribbon' ? null : <Take {...{ part, number, alone, units }} />}
    </div>
  </article>
);

const TALLEST = 260;

/** On a page of its own the strip’s way says already what it does to opening. */
const notesOn = ({ notes, opening }: DrawnPart, alone: boolean): readonly string[] =>
  alone ? notes.filter((note) => note !== opening?.words) : notes;

const FROM = { cardstock: 'from card stock', paper: 'from paper', ribbon: 'of ribbon' } as const;

const sayScores = ({ scores }: DrawnPart, units: Units): string =>
  `Score at ${scores.map(({ at }) => printExact(at, units)).join(', ')} from the ${EDGE[scores[0]!.from]}.`;

const EDGE = { left: 'left edge', top: 'top edge' } as const;

/** What the order is told of it, as its form names it. */
const Take: FC<Props> = ({ part, number, alone, units }) => {
  const fields = {
    name: part.name,
    width: typedLength(part.width, units),
    height: typedLength(part.height, units),
    copies: `${part.copies}`,
    print: part.upright ? 'upright' : 'any way',
    paper: part.material === 'cardstock' ? 'kind-cardstock' : '',
  };
  return (
    <>
      {Object.entries(fields).map(([name, value]) => (
        <input type="hidden" name={`parts.${number}.${name}`} value={value} />
      ))}
      <p class="no-print">
        <label>
          <input type="checkbox" name={`take.${number}`} checked={alone} /> to be cut
        </label>
      </p>
    </>
  );
};
