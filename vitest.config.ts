/** Runs every test file; tsx is registered because Kysely's migrator imports TypeScript migrations itself. */
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    execArgv: ['--import', 'tsx'],
    testTimeout: 20_000,
    globalSetup: ['tests/support/find-browser.ts'],
    reporters: ['default', './tests/support/tally.ts'],
  },
});
