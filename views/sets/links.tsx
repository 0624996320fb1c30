/** Ways from an envelope and from a project to the parts of its set and to what it goes into. Works nothing out. */
import type { FC } from 'hono/jsx';
import type { Recipe } from '#core/envelope/recipe.ts';
import { typedLength, type Units } from '#shared/length.ts';
import { measuresOf, type Query } from '../envelopes/query.ts';

export const SetLinks: FC<{ recipe: Recipe; query: Query; units: Units }> = ({ recipe, query, units }) => (
  <p>
    <a href={`/parts?${partsQuery(recipe, query, units)}`}>The parts of its set</a>: base, mats, liner, bands.{' '}
    <a href={`/holders/sets?${setsQuery(recipe, units)}`}>What would hold the finished sets</a>?
  </p>
);

/** The card as asked, and this very envelope. */
const partsQuery = (recipe: Recipe, query: Query, units: Units): URLSearchParams => {
  const { width = '', height = '', bulk, copies, project } = query;
  const card = {
    width,
    height,
    ...(bulk && { bulk }),
    ...(copies && { copies }),
    ...(project && { project }),
  };
  return new URLSearchParams({ ...card, ...measuresOf(recipe, units) });
};

const setsQuery = ({ pocket }: Recipe, units: Units): URLSearchParams =>
  new URLSearchParams({ width: typedLength(pocket.width, units), height: typedLength(pocket.height, units) });

export const PartsLine: FC<{ project: number }> = ({ project }) => (
  <p class="no-print">
    <a href={`/parts?project=${project}`}>The other parts of its set</a>: base, mats, liner, bands.
  </p>
);
