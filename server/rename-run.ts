import type { Span } from "../src-core/finding.ts";
import type { RunInBrief } from "../src-core/matrix-result.ts";
import type { SimulatedRun } from "../src-core/simulation-result.ts";

/** The same run with every file under the name that `rename` gives it. */
export function renameRun<Run extends RunInBrief>(run: Run, rename: (file: string) => string): Run {
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

/** The same for a run with all its details. */
export function renameDetailed(run: SimulatedRun, rename: (file: string) => string): SimulatedRun {
  const { places } = run.details;
  const renamed = places.map((span) => ({ ...span, file: rename(span.file) }));
  return { ...renameRun(run, rename), details: { ...run.details, places: renamed } };
}
