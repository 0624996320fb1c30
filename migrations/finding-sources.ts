/**
 * Where migration 0012 finds the words, facets and measures of each kind of thing, as pieces of SQL. Writes nothing.
 * Frozen once landed.
 */

/** Numbers of one kind follow each other from kind · 2⁴⁰, the newest last. */
export const ROOM = 2 ** 40;
export const NUMBER = {
  project: 1,
  lesson: 2,
  outcome: 3,
  part: 4,
  offcut: 5,
  design: 6,
  pad: 7,
  series: 8,
  place: 9,
  card: 10,
  'ready-made': 11,
};

/** From the private use area: a letter to the index, and nothing that anybody types begins with it. */
export const OURS = '\uE000';

type Measure = readonly [field: string, length: string, other?: string];

interface Source {
  readonly from: string;
  readonly owner: string;
  /** What is not present is not found. */
  readonly present?: string;
  readonly belongs: string;
  readonly number?: string;
  readonly title: string;
  readonly text?: string;
  readonly about?: string;
  readonly facets: readonly string[];
  readonly measures?: readonly Measure[];
}

const facet = (name: string, value: string): string =>
  `coalesce('${OURS}${name}x' || replace(replace(replace(${value}, ' ', ''), '-', ''), '''', '') || ' ', '')`;
const month = (at: string): string => facet('month', `replace(substr(${at}, 1, 7), '-', '')`);
/** The longer side in half inches begun, 25 for all beyond 12 in. */
const long = (width: string, height: string): string =>
  facet('long', `min(25, (max(${width}, ${height}) + 507999) / 508000)`);
const print = [
  facet('print', "json_extract(designs.swatch, '$.motif')"),
  facet('print', 'designs.direction'),
];
const sides = (field: string, width: string, height: string): readonly Measure[] => [
  [field, width, height],
  [field, height, width],
];

const inRecipe = (path: string): string => `json_extract(projects.recipe, '$.${path}')`;
const IS_DIAGONAL = `${inRecipe('fold')} = 'diagonal'`;
const ofDesigns = (what: string): string => `coalesce((SELECT group_concat(DISTINCT ${what}) FROM envelopes
  JOIN designs ON designs.id = envelopes.design_id JOIN pads ON pads.id = designs.pad_id
  WHERE envelopes.project_id = projects.id), '') || ' '`;

const ofProject = [
  facet('fold', inRecipe('fold')),
  month('projects.created_at'),
  month('projects.finished_at'),
  long('projects.card_width', 'projects.card_height'),
  ofDesigns(facet('paper', 'pads.kind')),
  ofDesigns(facet('print', "json_extract(designs.swatch, '$.motif')")),
];

export const SOURCES = {
  project: {
    from: 'projects LEFT JOIN series ON series.id = projects.series_id',
    owner: 'projects.id',
    belongs: 'projects.id',
    title: 'projects.title',
    text: 'projects.notes',
    about: `coalesce(series.name || ', ', '') || ${ofDesigns('designs.name')}`,
    facets: [
      ...ofProject,
      facet('fit', inRecipe('fit')),
      facet('is', "iif(projects.card_width IS NULL, NULL, 'envelope')"),
    ],
    measures: [
      ...sides('card', 'projects.card_width', 'projects.card_height'),
      ...sides('pocket', inRecipe('pocket.width'), inRecipe('pocket.height')),
      ...sides('blank', inRecipe('blank.width'), inRecipe('blank.height')),
      ['start', `iif(${IS_DIAGONAL}, ${inRecipe('starts[0]')}, NULL)`],
      ['start', `iif(${IS_DIAGONAL}, ${inRecipe('starts[1]')}, NULL)`],
      ['start', 'projects.start'],
    ],
  },
  lesson: {
    from: 'projects',
    owner: 'projects.id',
    present: "projects.lesson <> ''",
    belongs: 'projects.id',
    title: 'projects.title',
    text: 'projects.lesson',
    facets: ofProject,
  },
  outcome: {
    from: `outcomes JOIN envelopes ON envelopes.id = outcomes.envelope_id
      JOIN projects ON projects.id = envelopes.project_id
      LEFT JOIN designs ON designs.id = envelopes.design_id LEFT JOIN pads ON pads.id = designs.pad_id`,
    owner: 'outcomes.envelope_id',
    belongs: 'projects.id',
    number: 'envelopes.number',
    title: "projects.title || ', envelope ' || envelopes.number",
    text: 'trim(outcomes.wrong || char(10) || outcomes.saved_by, char(10))',
    about: "coalesce(designs.name, '')",
    facets: [
      facet('fold', inRecipe('fold')),
      facet('fit', 'outcomes.felt'),
      month('outcomes.at'),
      long('projects.card_width', 'projects.card_height'),
      facet('paper', 'pads.kind'),
      ...print,
      facet('is', "'envelope'"),
    ],
    measures: [
      ...sides('pocket', 'outcomes.pocket_width', 'outcomes.pocket_height'),
      ['square', 'outcomes.square', 'outcomes.square'],
      ['start', 'outcomes.start'],
    ],
  },
  part: {
    from: `plans JOIN projects ON projects.id = plans.project_id, json_each(plans.batch, '$.parts') AS part`,
    owner: '(plans.id * 1000 + part.key)',
    present: 'NOT EXISTS (SELECT 1 FROM plans AS later WHERE later.instead_of = plans.id)',
    belongs: 'plans.id',
    title: "part.value ->> 'name'",
    text: `coalesce((SELECT group_concat(spoiled.wrong, char(10) ORDER BY spoiled.id) FROM spoiled_parts AS spoiled
      WHERE spoiled.plan_id = plans.id AND spoiled.part = part.value ->> 'name'), '')`,
    about: 'projects.title',
    facets: [
      month('plans.asked_at'),
      facet('paper', "part.value ->> '$.paper.kind'"),
      long("part.value ->> 'width'", "part.value ->> 'height'"),
    ],
    measures: sides('part', "part.value ->> 'width'", "part.value ->> 'height'"),
  },
  offcut: {
    from: 'offcuts JOIN designs ON designs.id = offcuts.design_id JOIN pads ON pads.id = designs.pad_id',
    owner: 'offcuts.id',
    present: 'offcuts.count > 0',
    belongs: 'offcuts.id',
    title: "offcuts.code || ' ' || designs.name",
    text: 'offcuts.note',
    about: "offcuts.place || ' ' || pads.name",
    facets: [...print, facet('paper', 'pads.kind'), long('offcuts.width', 'offcuts.height')],
    measures: sides('piece', 'offcuts.width', 'offcuts.height'),
  },
  design: {
    from: 'designs JOIN pads ON pads.id = designs.pad_id',
    owner: 'designs.id',
    belongs: 'designs.id',
    title: 'designs.name',
    about: 'pads.name',
    facets: [...print, facet('paper', 'pads.kind'), long('pads.width', 'pads.height')],
    measures: [['border', 'designs.border']],
  },
  pad: {
    from: 'pads',
    owner: 'pads.id',
    belongs: 'pads.id',
    title: 'pads.name',
    text: 'pads.note',
    about: 'pads.source',
    facets: [facet('paper', 'pads.kind'), long('pads.width', 'pads.height')],
    measures: [
      ...sides('sheet', 'pads.width', 'pads.height'),
      ...sides(
        'sheet',
        'coalesce(pads.measured_width, pads.width)',
        'coalesce(pads.measured_height, pads.height)',
      ),
    ],
  },
  series: {
    from: 'series',
    owner: 'series.id',
    belongs: 'series.id',
    title: 'series.name',
    text: 'series.note',
    facets: [],
  },
  card: {
    from: 'card_sizes',
    owner: 'card_sizes.id',
    belongs: 'card_sizes.id',
    title: 'card_sizes.name',
    facets: [long('card_sizes.width', 'card_sizes.height')],
    measures: sides('card', 'card_sizes.width', 'card_sizes.height'),
  },
  'ready-made': {
    from: 'ready_made',
    owner: 'ready_made.id',
    belongs: 'ready_made.id',
    title: 'ready_made.name',
    text: 'ready_made.note',
    facets: [long('ready_made.width', 'ready_made.height'), facet('is', "'envelope'")],
    measures: sides('envelope', 'ready_made.width', 'ready_made.height'),
  },
} satisfies Record<string, Source>;

export type Kind = keyof typeof SOURCES;

export const firstOf = (kind: keyof typeof NUMBER): number => NUMBER[kind] * ROOM;
export const idIn = (kind: Kind): string => `${firstOf(kind)} + ${SOURCES[kind].owner}`;

export const COLUMNS = 'id, kind, belongs, number, title, text, about, facets';

export function findsOf(kind: Kind, where: string): string {
  const { from, present = 'TRUE', belongs, number = '0', title, text, about, facets }: Source = SOURCES[kind];
  return `SELECT ${idIn(kind)} AS id, '${kind}' AS kind, ${belongs} AS belongs, ${number} AS number, ${title} AS title,
    ${text ?? "''"} AS text, ${about ?? "''"} AS about, trim(${[...facets, "''"].join(' || ')}) AS facets
    FROM ${from} WHERE (${where}) AND ${present}`;
}

export function measuresOf(kind: Kind, where: string): string {
  const { from, present = 'TRUE', measures = [] }: Source = SOURCES[kind];
  const rows = measures.map(([field, length, other = '0']) => `json_array('${field}', ${length}, ${other})`);
  return `SELECT DISTINCT ${NUMBER[kind]} AS kind, measure.value ->> 1 AS length, ${idIn(kind)} AS find_id,
    measure.value ->> 0 AS field, measure.value ->> 2 AS other
    FROM ${from}, json_each(json_array(${rows.join(', ')})) AS measure
    WHERE (${where}) AND ${present} AND measure.value ->> 1 > 0 AND typeof(measure.value ->> 1) = 'integer'`;
}
