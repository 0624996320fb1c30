/** Everything that reads text, on text that nobody types: eight times as long takes about eight times the work, not 64. */
import { expect, test } from 'vitest';
import { readPencilCode } from '#shared/ids.ts';
import { readLength, readSignedLength, typedUnit } from '#shared/length.ts';
import { readMass } from '#shared/mass.ts';
import { fillingForm } from '#shared/schemas/filling.ts';
import { readOrder } from '#shared/schemas/order.ts';
import { batchForm } from '#shared/schemas/plan.ts';
import { readSide, readSize } from '#shared/size-typed.ts';
import { canGoOn } from '#shared/unfinished.ts';

const INCHES = { unit: 'in', step: 16 } as const;
/** Half way from linear to quadratic, which is 64 times as much. */
const MOST_GROWTH = 24;
/** Processor time, in microseconds, below which nothing can be told about growth. */
const NOTHING = 1000;

const TEXTS = ['²', '₁', '⁴⁄', '½', '1 ', ' ', 'x ', '- ', '≈ ', ',000', '"', 'in ', 'g ', '0', '1/', 'by'];

const spent = (work: () => unknown): number => {
  const before = process.cpuUsage().user;
  work();
  return process.cpuUsage().user - before;
};

/** The least of three, since other work may fall into one. */
const least = (work: () => unknown): number => Math.min(spent(work), spent(work), spent(work));

function expectLinear(work: (times: number) => () => unknown, times: number): void {
  const [small, large] = [work(times), work(8 * times)];
  expect(least(large)).toBeLessThan(MOST_GROWTH * Math.max(NOTHING, least(small)));
}

test.each<[string, (text: string) => unknown]>([
  ['a length', (text) => readLength(text, INCHES)],
  ['a correction', (text) => readSignedLength(text, INCHES)],
  ['a unit', typedUnit],
  ['one side', (text) => readSide(text, INCHES)],
  ['both sides', (text) => readSize(text, INCHES)],
  ['a size half typed', (text) => canGoOn(text, (whole) => readSize(whole, INCHES))],
  ['a weight', (text) => readMass(text, 'g')],
  ['a code', readPencilCode],
  ['the grammage of a part', (text) => batchForm(INCHES).safeParse({ 'parts.0.grammage': text })],
  ['a length in an order', (text) => readOrder({ parts: [{ width: text }] })],
])('%s', (_, read) => {
  for (const text of TEXTS)
    for (const end of ['', 'x'])
      expectLinear((times) => {
        const typed = `1${text.repeat(times)}${end}`;
        return () => read(typed);
      }, 2000);
});

test.each<[string, (times: number) => () => unknown]>([
  ['ticks of a filling', (times) => reading(fillingForm(INCHES), times, (row) => [`card.${row + 1}`, 'on'])],
  ['rows of a filling', (times) => reading(fillingForm(INCHES), times, (row) => [`parts.${row}.name`, 'x'])],
  ['parts of a batch', (times) => reading(batchForm(INCHES), times, (row) => [`parts.${row}.name`, 'x'])],
  ['an order', (times) => () => readOrder({ parts: listed(times), pieces: listed(times) })],
])('many %s', (_, work) => expectLinear(work, 150));

function reading(
  form: { safeParse: (fields: unknown) => unknown },
  times: number,
  field: (row: number) => [string, string],
): () => unknown {
  const fields = Object.fromEntries(Array.from({ length: times }, (_, row) => field(row)));
  return () => form.safeParse(fields);
}

const listed = (times: number): unknown[] =>
  Array.from({ length: times }, (_, row) => ({ id: `${row}`, width: '7 in', height: 'x', copies: 1 }));
