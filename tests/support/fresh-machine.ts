/**
 * Before all tests: as root on Debian brings the Chromium and the poppler that they need; elsewhere, or where that fails,
 * says in one line what is skipped and how to get it. Knows no test.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { findBrowser } from './find-browser.ts';

interface Need {
  readonly what: string;
  readonly debian: string;
  readonly hint: string;
  readonly isThere: () => boolean;
}

const NEEDS: readonly Need[] = [
  {
    what: 'browser tests',
    debian: 'chromium',
    hint: 'apt-get install -y chromium, or set CHROMIUM to the path of a Chrome',
    isThere: () => findBrowser() !== undefined,
  },
  {
    what: 'measuring PDFs',
    debian: 'poppler-utils',
    hint: 'apt-get install -y poppler-utils',
    isThere: () => spawnSync('pdftoppm', ['-v']).error === undefined,
  },
];

const missing = (): readonly Need[] => NEEDS.filter(({ isThere }) => !isThere());

/** What is said of the needs that stay unmet, in one line; undefined where there are none. */
export const sayMissing = (needs: readonly Pick<Need, 'what' | 'hint'>[]): string | undefined =>
  needs.length === 0
    ? undefined
    : `Skipped: ${needs.map(({ what, hint }) => `${what} (to get it: ${hint})`).join('; ')}.`;

/** Whether packages may be brought: Debian by its own name for itself, and the superuser asks. */
export const mayBring = (osRelease: string, user: number | undefined): boolean =>
  user === 0 && /^ID="?debian"?$/m.test(osRelease);

const osRelease = (): string =>
  existsSync('/etc/os-release') ? readFileSync('/etc/os-release', 'utf8') : '';

function bring(packages: readonly string[]): void {
  console.log(`Bringing what the tests need: apt-get install ${packages.join(' ')}`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const run = (...args: string[]) => execFileSync('apt-get', args, { env, stdio: 'pipe' });
  try {
    run('update', '-qq');
    run('install', '-y', '-qq', '--no-install-recommends', ...packages);
  } catch (failure) {
    console.log(`apt-get could not: ${(failure as Error).message.split('\n')[0]}`);
  }
}

export default function prepare(): void {
  if (process.env.TESTS_PREPARED) return;
  process.env.TESTS_PREPARED = 'yes';
  const wanted = missing().map(({ debian }) => debian);
  if (wanted.length > 0 && mayBring(osRelease(), process.getuid?.())) bring(wanted);
  const line = sayMissing(missing());
  if (line) console.log(line);
}
