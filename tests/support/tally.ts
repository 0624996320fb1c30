/** Closes every test run with one plain line: how many passed, how many failed, how many were skipped. */
import type { Reporter, TestModule } from 'vitest/node';

export default class Tally implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[]): void {
    const states = modules.flatMap((module) =>
      [...module.children.allTests()].map((test) => test.result().state),
    );
    const count = (state: string): number => states.filter((one) => one === state).length;
    const broken = modules.filter((module) => module.errors().length > 0).length + errors.length;
    const skipped = count('skipped');
    const tail = skipped > 0 ? `, ${skipped} skipped` : '';
    process.stdout.write(`\n${count('passed')} passed, ${count('failed') + broken} failed${tail}\n`);
  }
}
