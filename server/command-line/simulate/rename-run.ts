import type { Span } from "../../../src-core/finding.ts";
import type { RunInBrief } from "../../../src-core/matrix-result.ts";

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
