/** Checks what a project waits for, from an idea to a lesson. */
import { describe, expect, it } from 'vitest';
import type { Envelope, EnvelopeState, Project } from '#core/project/journal.ts';
import { missingBlanks, nextThing } from '#core/project/next.ts';
import { FIRST, RECIPE } from '#tests/support/cast.ts';

const PROJECT: Project = {
  id: 1,
  title: 'Thank you',
  state: 'cut',
  card: RECIPE.card,
  quantity: 2,
  recipe: RECIPE,
  look: null,
  start: null,
  notcher: 1,
  series: null,
  notes: '',
  lesson: '',
  createdAt: FIRST,
  changedAt: FIRST,
  finishedAt: null,
};

const OUTCOME = {
  at: FIRST,
  notcher: 1,
  felt: 'easy',
  pocket: null,
  asMade: null,
  twin: false,
  finishes: null,
  wrong: '',
  savedBy: '',
} as const;

const envelope = (number: number, state: EnvelopeState, rest: Partial<Envelope> = {}): Envelope => ({
  id: number,
  number,
  state,
  trial: false,
  cut: 1,
  design: 1,
  start: null,
  outcome: null,
  ...rest,
});

const scrap = (number: number, state: EnvelopeState): Envelope =>
  envelope(number, state, { trial: true, cut: null, design: null });

const next = (envelopes: readonly Envelope[], rest: Partial<Project> = {}) =>
  nextThing({ project: { ...PROJECT, ...rest }, envelopes, cuts: [] });

describe('the next thing', () => {
  it('is an envelope, then its paper', () => {
    expect(next([], { recipe: null })).toEqual({ kind: 'choose envelope' });
    expect(next([])).toEqual({ kind: 'take paper', missing: 2 });
  });

  it('is a trial before the batch, and the one on scrap that was begun', () => {
    const blanks = [envelope(1, 'blank'), envelope(2, 'blank')];
    expect(next(blanks)).toMatchObject({ kind: 'make trial', envelope: { number: 1 } });
    expect(next([...blanks, scrap(3, 'blank')])).toMatchObject({
      kind: 'make trial',
      envelope: { number: 3 },
    });
  });

  it('is the next blank once one was folded to the end', () => {
    expect(next([envelope(1, 'made'), envelope(2, 'blank')])).toMatchObject({
      kind: 'make',
      envelope: { number: 2 },
    });
    expect(next([envelope(1, 'blank'), scrap(2, 'made')])).toMatchObject({
      kind: 'make',
      envelope: { number: 1 },
    });
  });

  it('is another trial when the first was spoiled', () => {
    expect(next([envelope(1, 'spoiled'), envelope(2, 'blank')])).toMatchObject({
      kind: 'make trial',
      envelope: { number: 2 },
    });
  });

  it('is paper for what was spoiled, before anything is written down', () => {
    expect(next([envelope(1, 'made'), envelope(2, 'spoiled')])).toEqual({ kind: 'take paper', missing: 1 });
  });

  it('is what nothing is noted of, then the lesson, then nothing', () => {
    const noted = { outcome: OUTCOME };
    const half = [envelope(1, 'made', noted), envelope(2, 'made')];
    expect(next(half)).toMatchObject({ kind: 'write down', envelopes: [{ number: 2 }] });
    const all = [envelope(1, 'made', noted), envelope(2, 'made', noted)];
    expect(next(all)).toEqual({ kind: 'lesson' });
    expect(next(all, { lesson: 'Score twice.' })).toEqual({ kind: 'nothing' });
  });

  it('asks for no more paper and no more folding once she called it finished', () => {
    const finished = { finishedAt: FIRST, state: 'made' } as const;
    expect(next([envelope(1, 'made'), envelope(2, 'blank')], finished)).toMatchObject({ kind: 'write down' });
    expect(next([], finished)).toEqual({ kind: 'lesson' });
    expect(next([], { ...finished, recipe: null, lesson: 'Not worth it.' })).toEqual({ kind: 'nothing' });
  });
});

describe('missing blanks', () => {
  it('count neither scrap nor what is spoiled, and never fall below none', () => {
    expect(missingBlanks(3, [envelope(1, 'made'), envelope(2, 'spoiled'), scrap(3, 'made')])).toBe(2);
    expect(missingBlanks(1, [envelope(1, 'made'), envelope(2, 'blank')])).toBe(0);
  });
});
