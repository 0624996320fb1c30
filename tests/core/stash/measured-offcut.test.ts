/** How large an offcut of a paper can be, as sold or as measured, turned or not, and whether it can have a border. */
import { expect, test } from 'vitest';
import { borderedOnly, exceeded } from '#core/stash/measured-offcut.ts';
import { inches } from '#shared/length.ts';
import { FERN, HARE, HEM, MEADOW, scrap, size } from '#tests/support/cast.ts';

const pad = { ...MEADOW, id: 1, sheet: size(12, 8), measured: { width: inches(11.875) } };

test('a whole sheet as sold is not too large, though the one measured was smaller; more than it is', () => {
  expect(exceeded(size(12, 8), { ...FERN, pad })).toBeUndefined();
  expect(exceeded(size(12, 8.25), { ...FERN, pad })).toEqual(size(12, 8));
});

test('one that was measured larger allows as much', () => {
  const larger = { ...pad, measured: { height: inches(8.125) } };
  expect(exceeded(size(12, 8.125), { ...FERN, pad: larger })).toBeUndefined();
});

test('only a print that may lie any way is measured turned', () => {
  expect(exceeded(size(8, 12), { ...FERN, pad })).toBeUndefined();
  expect(exceeded(size(8, 12), { ...HARE, pad })).toEqual(size(12, 8));
});

test('only a print with a border on one edge leaves it on an offcut', () => {
  const said = scrap(6, 6, { border: true });
  expect([FERN, HARE, HEM].map((design) => borderedOnly(said, design).border)).toEqual([false, false, true]);
});
