/** Undoing a taking through its form: all of it back, or the reason in words and nothing changed. */
import { beforeEach, describe, expect, test } from 'vitest';
import { takePiece } from '#stores/cuts.ts';
import { listEnvelopes, makeEnvelope } from '#stores/envelopes.ts';
import { countSheets } from '#stores/movements.ts';
import { listOffcuts } from '#stores/offcuts.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { type Cast, fillShelf, later, size } from '#tests/support/cast.ts';
import { takeThree } from '#tests/support/projects.ts';
import { shelf } from '#tests/support/shelf.ts';
import { printDay } from '#views/common/when.tsx';

let app: App;
let cast: Cast;
let before: Record<string, number>;
let taken: { project: number; cut: number; envelopes: readonly number[] };
beforeEach(async () => {
  app = await openApp();
  cast = await fillShelf(app.db);
  before = await shelf(app.db);
  taken = await takeThree(app.db, cast);
});

const undo = (id: number | string = taken.cut) => app.post(`/cuts/${id}`, { _method: 'DELETE' });

test('puts everything back and says so on the project’s page', async () => {
  const answer = await undo();
  expect(answer.headers.get('Location')).toBe(`/projects/${taken.project}#cut-${taken.cut}`);
  expect(await shelf(app.db)).toEqual(before);
  expect(await listEnvelopes(app.db, taken.project)).toEqual([]);
  const shown = await (await app.get(`/projects/${taken.project}`)).text();
  expect(shown).toContain('all of it is back on the shelf');
  expect(shown).toContain('Take 3 blanks from the shelf');
});

test('is offered on top of the page while nothing else has happened since', async () => {
  const shown = async () => (await app.get(`/projects/${taken.project}`)).text();
  expect(await shown()).toContain('Taken from Fern. What is left over lies on your shelf.');
  await makeEnvelope(app.db, taken.envelopes[0]!, later(3));
  expect(await shown()).not.toContain('Taken from Fern');
});

describe('is refused', () => {
  const refusal = async (): Promise<string> => {
    const now = await shelf(app.db);
    const answer = await undo();
    expect(answer.status).toBe(409);
    expect(await shelf(app.db)).toEqual(now);
    return answer.text();
  };

  test('once an envelope is made from it, and the form is not offered then', async () => {
    await makeEnvelope(app.db, taken.envelopes[1]!, later(3));
    const shown = await refusal();
    expect(shown).toContain('Not undone. Envelope 2 was made or spoiled since.');
    expect(shown).not.toContain(`action="/cuts/${taken.cut}"`);
  });

  test('once the sheets were counted', async () => {
    await countSheets(app.db, cast.fern.id, { sheets: 2, at: later(5) });
    expect(await refusal()).toContain(`a count of the sheets of Fern on ${printDay(later(5))}`);
  });

  test('once a leftover was used, naming the project', async () => {
    const leftover = (await listOffcuts(app.db, { designs: [cast.fern.id] }))[0]!;
    const piece = { design: cast.fern.id, offcut: leftover.id };
    const wanted = { ...size(1, 1), mayTurn: true };
    await takePiece(app.db, { piece, wanted, copies: 1, project: { title: 'Tags <3' }, at: later(6) });
    const shown = await refusal();
    expect(shown).toContain(`offcut ${leftover.code} of Fern was used for “Tags &lt;3”. Undo that first.`);
  });

  test('the second time', async () => {
    await undo();
    expect(await refusal()).toContain('This was undone before');
  });
});

test.each(['999', '0', 'x', '1.5'])('a taking %s that never was is not here', async (id) => {
  expect((await undo(id)).status).toBe(404);
});
