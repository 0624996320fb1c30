/**
 * Runs every test file, two at a time. What shares nothing but memory keeps one module graph per worker; what starts
 * programs of its own, or a browser, has a fresh one per file.
 */
import { defineConfig } from 'vitest/config';

const PROGRAMS = ['tests/*.test.ts'];
const BROWSER = ['tests/browser/**/*.test.ts'];

export default defineConfig({
  test: {
    maxWorkers: 2,
    testTimeout: 180_000,
    hookTimeout: 180_000,
    globalSetup: ['tests/support/fresh-machine.ts'],
    reporters: ['default', './tests/support/tally.ts'],
    projects: [
      {
        extends: true,
        test: {
          name: 'in memory',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: [...PROGRAMS, ...BROWSER],
          isolate: false,
        },
      },
      { extends: true, test: { name: 'programs', include: PROGRAMS } },
      { extends: true, test: { name: 'browser', include: BROWSER, isolate: false } },
    ],
  },
});
