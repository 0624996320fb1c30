/** What a fresh machine is told, and whose packages are left alone. */
import { expect, test } from 'vitest';
import { mayBring, sayMissing } from './fresh-machine.ts';

const DEBIAN = 'PRETTY_NAME="Debian GNU/Linux 12 (bookworm)"\nID=debian\n';

test('brings packages as root on Debian only', () => {
  expect(mayBring(DEBIAN, 0)).toBe(true);
  expect(mayBring(DEBIAN, 1000)).toBe(false);
  expect(mayBring('ID=ubuntu\nID_LIKE=debian\n', 0)).toBe(false);
  expect(mayBring('', undefined)).toBe(false);
});

test('says in one line what is skipped and how to get it', () => {
  expect(sayMissing([])).toBeUndefined();
  const line = sayMissing([
    { what: 'browser tests', hint: 'get a browser' },
    { what: 'measuring PDFs', hint: 'get poppler' },
  ]);
  expect(line).toBe(
    'Skipped: browser tests (to get it: get a browser); measuring PDFs (to get it: get poppler).',
  );
});
