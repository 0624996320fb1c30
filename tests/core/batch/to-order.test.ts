/**
 * From a batch to an order and back: which pieces will do, how prints and matches carry over, what a plan becomes in
 * the stash, what changed since. Every plan is judged by the planner's own judge, every record replayed.
 */
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Batch } from '#core/batch/batch.ts';
import { partNames, partsLeft } from '#core/batch/batch.ts';
import { changesSince } from '#core/batch/changes.ts';
import { identified } from '#core/batch/earlier-identity.ts';
import { firstPiece } from '#core/batch/first-piece.ts';
import { pieceCuts } from '#core/batch/piece-cuts.ts';
import { areasOf, type FoundPlan, proofOf } from '#core/batch/planned.ts';
import { suggest, suggestionsFor } from '#core/batch/suggest.ts';
import { type Cutting, cuttingOf, hopeless, pieceName, type Shelf, toPiece } from '#core/batch/to-order.ts';
import { checkPlan } from '#core/cutting/check.ts';
import { planCuts } from '#core/cutting/plan.ts';
import { pieceDrawing } from '#core/drawing/piece.ts';
import { foldOf } from '#core/envelope/folds.ts';
import { solveEnvelope } from '#core/envelope/recipes.ts';
import type { Project, ProjectInFull } from '#core/project/journal.ts';
import { problemsOfCut } from '#core/stash/replay.ts';
import { type Piece, pieceOfOffcut, pieceOfSheet, refOf } from '#core/stash/stash.ts';
import type { PartAsked } from '#shared/batch.ts';
import { inches } from '#shared/length.ts';
import type { Database } from '#stores/database.ts';
import { listDesigns } from '#stores/designs.ts';
import { listOffcuts } from '#stores/offcuts.ts';
import { createProject } from '#stores/projects.ts';
import { CARD, type Cast, FIRST, fillShelf, RECIPE, size, THANKS } from '#tests/support/cast.ts';
import { freshDatabase } from '#tests/support/fresh-database.ts';

const UNITS = { unit: 'in', step: 16 } as const;

let db: Database;
let cast: Cast;
let project: Project;
let other: Project;
let shelf: Shelf;

beforeAll(async () => {
  db = await freshDatabase();
  cast = await fillShelf(db);
  project = await createProject(db, THANKS, FIRST);
  other = await createProject(db, { ...THANKS, title: 'For next door', quantity: 1 }, FIRST);
  const pieces = [
    ...(await listDesigns(db, { left: true })).map(pieceOfSheet),
    ...(await listOffcuts(db)).map(pieceOfOffcut),
  ];
  shelf = { pieces, longestCut: inches(18), keepAtLeast: inches(1) };
});

const TWO_PIECE = solveEnvelope({ card: CARD, notcher: RECIPE.notcher }).find(
  ({ fold }) => fold === 'two-piece',
)!;
const twoPiece = (): Project => ({ ...project, recipe: TWO_PIECE });

const part = (rest: Partial<PartAsked> = {}): PartAsked => ({
  name: 'Front',
  ...size(5, 3),
  copies: 3,
  print: 'any way',
  paper: { of: 'any' },
  grammage: null,
  match: false,
  ...rest,
});

const batch = (rest: Partial<Batch> = {}): Batch => ({
  blanks: [{ project: project.id, copies: 3, missing: 3 }],
  paper: { of: 'any' },
  parts: [part()],
  match: 'each set',
  keep: [],
  ...rest,
});

const cut = (asked: Batch, projects = [project, other]): Cutting => cuttingOf(asked, projects, shelf);
const partOf = (cutting: Cutting, id: string) => cutting.order.parts.find((one) => one.id === id)!;
const ids = (cutting: Cutting): string[] => cutting.pieces.map(({ id }) => id).sort();
const withoutIdentity = (key: string, value: unknown): unknown =>
  key === 'of' || key === 'ref' ? undefined : value;
const named = (design: { id: number }): string => `${design.id}`;

const planned = (asked: Batch, projects = [project, other]): FoundPlan => {
  const cutting = cut(asked, projects);
  const plan = planCuts(cutting.order, cutting.pieces, { work: 40, seed: 1 });
  expect(checkPlan(cutting.order, cutting.pieces, plan)).toEqual([]);
  const rest = {
    trial: false,
    insteadOf: null,
    id: 1,
    askedAt: FIRST,
    fault: null,
    cut: null,
    ticks: [],
    spoiled: [],
  };
  return { project: project.id, batch: asked, ...cutting, plan, ...rest };
};

describe('an order', () => {
  test('says what each part and piece stands for, whatever their names', () => {
    const blanks = [project, other].map(({ id }) => ({ project: id, copies: 1, missing: 1 }));
    const asked = batch({ blanks, parts: [part({ name: 'envelope (project 2)' }), part()] });
    const cutting = cut(asked, [twoPiece(), other]);
    expect(cutting.order.parts.map(({ of }) => of)).toEqual([
      { project: project.id, piece: 0 },
      { project: project.id, piece: 1 },
      { project: other.id, piece: 0 },
      { typed: 0 },
      { typed: 1 },
    ]);
    const { order, pieces } = identified(asked, JSON.parse(JSON.stringify(cutting, withoutIdentity)));
    expect(JSON.stringify({ order, pieces })).toBe(
      JSON.stringify({ order: cutting.order, pieces: cutting.pieces }),
    );
  });

  test('has the blanks of the recipe and the typed parts, under the maker’s limits', () => {
    const { order } = cut(batch());
    expect(order.parts.map(({ id, width, height, copies }) => ({ id, width, height, copies }))).toEqual([
      { id: 'envelope', ...RECIPE.blank, copies: 3 },
      { id: 'Front', ...size(5, 3), copies: 3 },
    ]);
    expect(order).toMatchObject({ longestCut: inches(18), keepAtLeast: inches(1) });
  });

  test('leaves a blank free to turn, and holds a typed part upright where that is asked', () => {
    const { order } = cut(batch({ parts: [part({ print: 'upright' })] }));
    expect(order.parts.map(({ upright }) => upright)).toEqual([undefined, true]);
  });

  test('takes bordered paper for all parts, and nothing else for what asks for the border', () => {
    const hem = named(cast.hem);
    expect(partOf(cut(batch()), 'Front')).not.toHaveProperty('designs');
    expect(ids(cut(batch()))).toContain(`sheet-${cast.hem.id}`);
    const bordered = partOf(cut(batch({ parts: [part({ print: 'bordered' })] })), 'Front');
    expect(bordered).toMatchObject({ designs: [hem], pin: { edge: 'bottom' } });
    const chosen = batch({ parts: [part({ paper: { of: 'design', design: cast.hem.id } })] });
    expect(partOf(cut(chosen), 'Front')).toMatchObject({ designs: [hem] });
  });

  test('has a part with a spot come from there, as the drawing shows it, one from each whole sheet', () => {
    const at = { x: inches(2), y: inches(7.5) };
    const asked = batch({
      blanks: [],
      parts: [part({ at, copies: 2, paper: { of: 'design', design: cast.hare.id } })],
    });
    expect(partOf(cut(asked), 'Front').pin).toEqual(at);
    expect(ids(cut(asked))).toEqual([`sheet-${cast.hare.id}`]);
    const found = planned(asked);
    expect(found.plan.used.map(({ rectangles }) => rectangles)).toEqual(
      [0, 1].map(() => [{ part: 'Front', ...at, ...size(5, 3), turned: false }]),
    );
    // The drawing's x runs right and y down, as a spot is asked: its top left corner lies right of and under the sheet's.
    const { parts } = pieceCuts(found, () => '')[0]!;
    const box = { ...size(12, 12), code: 'Hare', leftovers: [], upright: true };
    const drawn = pieceDrawing(
      { ...box, parts: parts.map((one) => ({ ...one, name: 'Front', sign: 'F' })) },
      UNITS,
      1e-6,
    );
    const outlines = drawn.shapes.flatMap((shape) =>
      shape.kind === 'area' && (shape.role === 'part' || shape.role === 'waste') ? [shape.outline] : [],
    );
    const [sheet, front] = outlines.map((points) => points[0]!);
    expect([front!.x - sheet!.x, front!.y - sheet!.y]).toEqual([
      expect.closeTo(at.x * 1e-6),
      expect.closeTo(at.y * 1e-6),
    ]);
  });

  test('takes one kind of paper, and none too light or of unknown weight', () => {
    const kind = batch({ parts: [part({ paper: { of: 'kind', kind: 'cardstock' } })] });
    expect(partOf(cut(kind), 'Front').designs).toEqual([named(cast.white)]);
    const heavy = batch({ parts: [part({ grammage: 200 })] });
    // 216 g/m² white card, 180 g/m² meadow paper: the cast.
    expect(partOf(cut(heavy), 'Front').designs).toEqual([named(cast.white)]);
  });

  test('matches sets of card and envelope, or all of them', () => {
    const sets = cut(batch({ parts: [part({ match: true })] })).order.parts;
    expect(sets.map(({ match, oneDesign }) => [match, oneDesign])).toEqual([
      ['set', undefined],
      ['set', undefined],
    ]);
    const all = cut(batch({ match: 'all alike' })).order.parts;
    expect(all.map(({ match, oneDesign }) => [match, oneDesign])).toEqual([
      ['set', true],
      [undefined, undefined],
    ]);
  });

  test('has two blanks for an envelope of two pieces, both of one design and upright as its fold needs them', () => {
    const { order } = cut(batch(), [twoPiece()]);
    const blanks = order.parts.slice(0, 2);
    expect(blanks.map(({ id }) => id)).toEqual(['envelope', 'envelope, piece 2']);
    expect(blanks.map(({ width, height }) => ({ width, height }))).toEqual(
      foldOf(TWO_PIECE).blanks(TWO_PIECE),
    );
    for (const blank of blanks) expect(blank).toMatchObject({ upright: true, match: `set ${project.id}` });
  });

  test('names the blanks of other projects after them, and no typed part like an envelope', () => {
    const blanks = [...batch().blanks, { project: other.id, copies: 1, missing: 1 }];
    const both = cut(batch({ blanks, parts: [part({ name: 'Envelope' }), part(), part()] }));
    expect(both.order.parts.map(({ id }) => id)).toEqual([
      'envelope',
      `envelope (project ${other.id})`,
      'Part Envelope',
      'Front',
      'Front 2',
    ]);
  });

  test('hands on the pieces that hold some part, marked where they are kept', () => {
    const small = cut(batch({ blanks: [], parts: [part(size(12, 2.5))] }));
    expect(ids(small)).toContain(`offcut-${cast.strips.id}`);
    expect(ids(small)).not.toContain(`offcut-${cast.lying.id}`);
    const kept = cut(batch({ keep: [`offcut-${cast.corner.id}`] }));
    expect(kept.pieces.filter(({ keep }) => keep).map(({ id }) => id)).toEqual([`offcut-${cast.corner.id}`]);
  });

  test('tells the planner what print and border each piece has', () => {
    const [hare, hem, fern] = [cast.hare, cast.hem, cast.fern].map((one) => toPiece(pieceOfSheet(one)));
    expect(hare).toMatchObject({ kind: 'sheet', copies: 3, upright: true, edges: [] });
    expect(hem).toMatchObject({ upright: true, edges: ['bottom'], border: inches(1.5) });
    expect(fern).not.toHaveProperty('upright');
    for (const piece of shelf.pieces) expect(toPiece(piece).ref).toEqual(refOf(piece));
  });
});

describe('no hope', () => {
  const why = (asked: Batch) => hopeless(asked, [project, other], shelf, UNITS);

  test('is seen before planning, beside the field', () => {
    expect(why(batch())).toEqual([]);
    expect(why(batch({ blanks: [], parts: [] })).map(({ field }) => field)).toEqual(['blanks']);
    expect(why(batch({ parts: [part(), part(size(13, 2))] }))).toEqual([
      {
        field: 'parts.1.width',
        message: expect.stringContaining(
          '13 × 2″ is larger than any of this paper; the largest piece is 12 × 12″',
        ),
      },
    ]);
    expect(why(batch({ parts: [part({ paper: { of: 'kind', kind: 'vellum' } })] }))[0]!.field).toBe(
      'parts.0.paper',
    );
    const everything = shelf.pieces.map((piece) => pieceName(refOf(piece)));
    expect(why(batch({ keep: everything })).map(({ field }) => field)).toEqual(['keep']);
  });

  test('says which distance of a spot runs over the edge', () => {
    const spot = (x: number, y: number) =>
      why(batch({ blanks: [], parts: [part({ at: { x: inches(x), y: inches(y) } })] }));
    expect(spot(7, 9)).toEqual([]);
    expect(spot(7.5, 9)).toEqual([
      {
        field: 'parts.0.fromLeft',
        message: '5 × 3″ from there runs over the edge of the sheet, which is 12 × 12″.',
      },
    ]);
    expect(spot(0, 9.5).map(({ field }) => field)).toEqual(['parts.0.fromTop']);
    const sheets = shelf.pieces.filter(({ offcut }) => !offcut).map((piece) => pieceName(refOf(piece)));
    const none = batch({ blanks: [], parts: [part({ at: { x: inches(0), y: inches(0) } })], keep: sheets });
    expect(why(none)).toMatchObject([
      { field: 'parts.0.paper', message: expect.stringContaining('whole sheet') },
    ]);
  });

  test('says where turning would help', () => {
    const upright = {
      ...size(4, 10),
      paper: { of: 'design', design: cast.lying.design.id },
      print: 'upright',
    } as const;
    const keep = [`sheet-${cast.hare.id}`];
    const lying = { ...upright, ...size(4, 9) };
    expect(why(batch({ blanks: [], parts: [part(lying)], keep }))[0]!.message).toContain(
      'Lying any way it would fit.',
    );
  });
});

describe('a plan', () => {
  test('becomes what the stash writes down, blanks under the one name that makes envelopes', () => {
    const blanks = [...batch().blanks, { project: other.id, copies: 1, missing: 1 }];
    const found = planned(batch({ blanks }));
    const cuts = pieceCuts(found, ({ offcut }) => (offcut === null ? 'new' : 'old'));
    expect(cuts.flatMap(problemsOfCut)).toEqual([]);
    const envelopes = cuts.flatMap(({ parts }) => parts.filter((one) => one.part === 'envelope'));
    expect(envelopes.map((one) => one.project).sort()).toEqual(
      [other.id, undefined, undefined, undefined].sort(),
    );
    for (const one of cuts) {
      for (const left of one.leftovers) expect(left.place).toBe(one.piece.offcut === null ? 'new' : 'old');
    }
  });

  test('leaves the border on the leftover that has the bottom edge', () => {
    const keep = shelf.pieces
      .map((piece) => pieceName(refOf(piece)))
      .filter((name) => name !== `sheet-${cast.hem.id}`);
    const asked = batch({
      blanks: [],
      parts: [part({ ...size(12, 4), copies: 1, print: 'bordered' })],
      keep,
    });
    const found = planned(asked);
    const [one] = pieceCuts(found, () => '');
    expect(one!.parts.map(({ y, height }) => y + height)).toEqual([inches(12)]);
    expect(one!.leftovers.map(({ border }) => border)).toEqual([false]);
    const free = batch({
      blanks: [],
      keep,
      parts: [part({ ...size(12, 4), copies: 1, paper: { of: 'design', design: cast.hem.id } })],
    });
    const other = planned(free);
    const borders = pieceCuts(other, () => '')[0]!.leftovers;
    for (const left of borders) expect(left.border).toBe(left.y + left.height === inches(12));
  });

  test('accounts for all the paper it uses', () => {
    const { used, parts, kept, waste } = areasOf(planned(batch()));
    expect(parts + kept + waste * used).toBeCloseTo(used, -3);
    expect(waste).toBeGreaterThanOrEqual(0);
  });

  test('proves in sheets what the bound proves in area', () => {
    const found = planned(batch());
    const proof = proofOf(found);
    expect(proof.leastSheets).toBeLessThanOrEqual(proof.newSheets);
    const twelve = inches(12) ** 2;
    const bounds = { unplaced: 0, newSheetArea: twelve * 1.5 };
    expect(proofOf({ ...found, plan: { ...found.plan, bounds } }).leastSheets).toBe(2);
  });
});

describe('the trial out of a plan', () => {
  test('frees one envelope and leaves whole what lies beside the way', () => {
    const found = planned(batch({ parts: [part({ copies: 8 })] }));
    const trial = firstPiece(found)!;
    expect(checkPlan(trial.order, found.pieces, trial.plan)).toEqual([]);
    expect(trial.plan.used).toHaveLength(1);
    const envelopes = trial.plan.used[0]!.rectangles.filter((one) => one.part === 'envelope');
    expect(envelopes).toHaveLength(1);
    expect(trial.plan.worthLost).toBeLessThanOrEqual(found.plan.worthLost);
  });

  test('has both pieces of an envelope that is made of two, from one design', () => {
    const found = planned(batch({ blanks: [{ project: project.id, copies: 2, missing: 2 }] }), [twoPiece()]);
    const trial = firstPiece(found)!;
    expect(checkPlan(trial.order, found.pieces, trial.plan)).toEqual([]);
    const parts = trial.plan.used.flatMap((one) => one.rectangles.map(({ part }) => part));
    expect(parts.filter((one) => one !== 'Front').sort()).toEqual(['envelope', 'envelope, piece 2']);
    const designs = trial.plan.used.map((one) => found.pieces.find(({ id }) => id === one.piece)!.design);
    expect(new Set(designs).size).toBe(1);
  });

  test('is none where there is no envelope', () => {
    const found = planned(batch({ blanks: [] }));
    expect(firstPiece(found)).toBeUndefined();
  });
});

describe('properties', () => {
  test('any batch gives sound plans, records and trials, whatever is kept back', () => {
    const side = fc.integer({ min: 8, max: 44 }).map((quarters) => quarters / 4);
    const parts = fc.array(
      fc.record({
        width: side,
        height: side,
        copies: fc.integer({ min: 1, max: 3 }),
        print: fc.constantFrom('any way', 'upright', 'bordered'),
        match: fc.boolean(),
      }),
      { maxLength: 3 },
    );
    const keep = fc.subarray(shelf.pieces.map((piece) => pieceName(refOf(piece))));
    fc.assert(
      fc.property(parts, keep, fc.integer({ min: 0, max: 3 }), (typed, keep, copies) => {
        const asked = batch({
          blanks: [{ project: project.id, copies, missing: 3 }],
          parts: typed.map(({ width, height, ...rest }) =>
            part({ ...rest, ...size(width, height) } as Partial<PartAsked>),
          ),
          keep,
        });
        const found = planned(asked);
        const cuts = pieceCuts(found, () => '');
        expect(cuts.flatMap(problemsOfCut)).toEqual([]);
        expect(cuts.filter(({ piece }) => keep.includes(pieceName(piece)))).toEqual([]);
        const trial = firstPiece(found);
        if (trial) expect(checkPlan(trial.order, found.pieces, trial.plan)).toEqual([]);
      }),
      { numRuns: 25, seed: 7 },
    );
  });
});

describe('changes since', () => {
  const full = (one: Project): ProjectInFull => ({ project: one, envelopes: [], cuts: [] });
  const now = (change: (piece: Piece) => Piece | undefined = (piece) => piece) => ({
    pieces: shelf.pieces.flatMap((piece) => change(piece) ?? []),
    projects: [full(project), full(other)],
  });

  test('are none on the same shelf, nor for pieces that the plan leaves alone', () => {
    const found = planned(batch());
    const used = new Set(found.plan.used.map((one) => one.piece));
    const rest = now((piece) => (used.has(pieceName(refOf(piece))) ? piece : { ...piece, count: 0 }));
    expect(changesSince(found, now())).toEqual([]);
    expect(changesSince(found, rest)).toEqual([]);
  });

  test('name what is gone, and what was put right', () => {
    const found = planned(batch());
    const [first] = found.plan.used;
    const piece = found.pieces.find(({ id }) => id === first!.piece)!.ref;
    const isFirst = (one: Piece): boolean => pieceName(refOf(one)) === first!.piece;
    const gone = now((one) => (isFirst(one) ? { ...one, count: 0 } : one));
    expect(changesSince(found, gone)).toMatchObject([{ kind: 'fewer', piece, left: 0 }]);
    const cropped = now((one) => (isFirst(one) ? { ...one, width: inches(3) } : one));
    expect(changesSince(found, cropped)).toEqual([{ kind: 'other piece', piece }]);
  });

  test('name a blank of another size, and blanks that came from elsewhere', () => {
    const found = planned(batch());
    const larger = { ...project, recipe: { ...RECIPE, blank: size(9, 9) } };
    const changed = changesSince(found, { ...now(), projects: [full(larger)] });
    expect(changed).toMatchObject([{ kind: 'other blank', was: RECIPE.blank, now: size(9, 9) }]);
    const fewer = { ...project, quantity: 2 };
    expect(changesSince(found, { ...now(), projects: [full(fewer)] })).toEqual([
      { kind: 'fewer missing', project: project.id, was: 3, now: 2 },
    ]);
  });
});

test('parts still to be cut are those asked, less those placed, and those spoiled again', () => {
  const found = planned(
    batch({ parts: [part({ copies: 4 }), part({ name: 'Tag', ...size(2, 2), copies: 2 })] }),
  );
  const spoiled = [{ part: 'Front', wrong: 'cut short', at: FIRST }];
  expect(partsLeft(found.batch, found)).toEqual([]);
  expect(partsLeft(found.batch, { ...found, spoiled }).map(({ name, copies }) => [name, copies])).toEqual([
    ['Front', 1],
  ]);
  expect(partsLeft(found.batch, { ...found, plan: null, spoiled: [] })).toEqual(found.batch.parts);
});

test('typed names stay apart', () => {
  expect(partNames([{ name: 'Tag' }, { name: 'Tag' }, { name: 'Tag 2' }])).toEqual([
    'Tag',
    'Tag 2',
    'Tag 2 2',
  ]);
});

describe('parts that one tap gives', () => {
  const given = (one: Parameters<typeof suggest>[0]) =>
    suggest(one, {
      soFar: { project, envelopes: [] },
      copies: 3,
      kinds: ['patterned', 'cardstock'],
      units: UNITS,
    });

  test('have the card’s sizes', () => {
    expect(suggestionsFor(project)).toEqual(['base', 'front', 'mat', 'inside', 'liner']);

    expect(given('base')).toMatchObject([
      {
        name: 'Card base',
        width: 2 * CARD.width,
        height: CARD.height,
        paper: { of: 'kind', kind: 'cardstock' },
      },
    ]);
    expect(given('front')).toMatchObject([{ ...size(5.625, 2.75), match: true }]);
    expect(given('mat').map(({ name }) => name)).toEqual(['Mat', 'Front panel']);
    const [liner] = given('liner');
    for (const side of [liner!.width, liner!.height]) expect(side % inches(1 / UNITS.step)).toBe(0);
  });

  test('are none without a card or a recipe', () => {
    expect(suggestionsFor({ ...project, card: null, recipe: null })).toEqual([]);
  });
});
