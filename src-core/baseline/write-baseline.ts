import type { Finding } from "../finding.ts";
import { identitiesOf, type LineOfFinding } from "../finding-identity.ts";
import type { Rename } from "./baseline.ts";
import { baselineVersion } from "./read-baseline.ts";

/** The text of a baseline that accepts these findings. `rename` makes the names as seen from it. */
export function baselineText(findings: readonly Finding[], lineOf: LineOfFinding, rename: Rename): string {
  const entries = new Map<string, { rule: string; file: string; text: string; times: number }>();
  for (const { rule, file, text, occurrence } of identitiesOf(findings, lineOf)) {
    entries.set(JSON.stringify([rule, file, text]), { rule, file: rename(file), text, times: occurrence });
  }
  const accepted = [...entries.values()].map(({ times, ...entry }) =>
    // Once goes without saying.
    JSON.stringify(times === 1 ? entry : { ...entry, times }),
  );
  const list = accepted.length === 0 ? "[]" : `[\n    ${accepted.join(",\n    ")}\n  ]`;
  // A line for each, so that a change of one is one line in a comparison.
  return `{\n  "version": ${baselineVersion},\n  "accepted": ${list}\n}\n`;
}
