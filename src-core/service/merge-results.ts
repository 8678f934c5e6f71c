import type { CheckResult } from "../check-result.ts";
import type { Span } from "../finding.ts";

/** The results of several projects as one; what two of them say alike, as of a shared header, is there once. */
export function mergeResults(results: readonly CheckResult[]): CheckResult {
  const runs = results.flatMap(({ runs = [] }) => runs);
  return {
    findings: distinct(results.flatMap(({ findings }) => findings)),
    notUnderstood: distinct(results.flatMap(({ notUnderstood }) => notUnderstood)),
    settingsFaults: distinct(results.flatMap(({ settingsFaults }) => settingsFaults)),
    files: [...new Set(results.flatMap(({ files }) => files))].sort(),
    ...(runs.length === 0 ? {} : { runs: runs.reduce((sum, each) => sum + each) }),
    checked: inAll(results.map(({ checked }) => checked)),
  };
}

function inAll([first = [], ...others]: readonly (readonly string[])[]): readonly string[] {
  return first.filter((rule) => others.every((other) => other.includes(rule)));
}

function distinct<T extends { readonly span: Span }>(items: readonly T[]): readonly T[] {
  const seen = new Map(items.map((item) => [JSON.stringify(item), item]));
  return [...seen.values()].sort(
    (a, b) => compare(a.span.file, b.span.file) || a.span.start - b.span.start || a.span.end - b.span.end,
  );
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
