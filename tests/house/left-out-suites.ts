import type { Reporter, TestModule } from "vitest/node";

/** Says after a run which suites it did not include, so that a green run is not taken for more than it is. */
export class LeftOutSuites implements Reporter {
  private readonly elsewhere: Readonly<Record<string, string>>;

  /** Project name to one line that says what the suite needs and how to run it. */
  constructor(elsewhere: Readonly<Record<string, string>>) {
    this.elsewhere = elsewhere;
  }

  onTestRunEnd(modules: readonly TestModule[]): void {
    const run = new Set(modules.map((module) => module.project.name));
    if (!run.has("unit")) return;
    const lines = Object.entries(this.elsewhere).filter(([name]) => !run.has(name));
    if (lines.length === 0) return;
    const text = lines.map(([name, what]) => `  ${name.padEnd(8)} ${what}`).join("\n");
    process.stdout.write(`\nSuites left out of this run:\n${text}\n`);
  }
}
