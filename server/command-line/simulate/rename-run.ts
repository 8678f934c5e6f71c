import type { Span } from "../../../src-core/finding.ts";
import type { SimulatedRun } from "../../../src-core/simulation-result.ts";

/** The same run with every file under the name that `rename` gives it. */
export function renameRun(run: SimulatedRun, rename: (file: string) => string): SimulatedRun {
  const renamed = (span: Span | undefined): Span | undefined => span && { ...span, file: rename(span.file) };
  const { verdict, stopped } = run;
  return {
    ...run,
    stopped: stopped && { ...stopped, span: renamed(stopped.span) },
    verdict: {
      ...verdict,
      failures: verdict.failures.map((failure) => ({ ...failure, span: renamed(failure.span) })),
    },
  };
}
