import { modify } from "jsonc-parser";
import type { Edit, Finding, RuleLevel } from "../finding.ts";
import { identitiesOf, type LineOfFinding } from "../finding-identity.ts";
import type { Baseline, BaselineEntry } from "./baseline.ts";

export interface BaselineOptions {
  readonly lineOf: LineOfFinding;
  /** Whether finding nothing of a rule in a file means that there is nothing. */
  readonly isChecked: (rule: string, file: string) => boolean;
  /** Level of `note/unattached`. */
  readonly unattached: RuleLevel;
}

export interface Applied {
  /** What is not accepted, and what the baseline accepts without need: `note/unattached` in the baseline. */
  readonly findings: readonly Finding[];
  /** How many findings were left out. */
  readonly accepted: number;
}

/** Leaves out the findings that a baseline accepts: of those that an entry fits, as many as it says, the first ones. */
export function applyBaseline(
  findings: readonly Finding[],
  baseline: Baseline,
  { lineOf, isChecked, unattached }: BaselineOptions,
): Applied {
  const left = new Map<string, number>();
  for (const entry of baseline.entries) {
    left.set(keyOf(entry), (left.get(keyOf(entry)) ?? 0) + entry.times);
  }
  const identities = identitiesOf(findings, lineOf);
  const kept = findings.filter((_, index) => {
    const identity = identities[index];
    if (identity === undefined) return true;
    const available = left.get(keyOf(identity)) ?? 0;
    if (available > 0) left.set(keyOf(identity), available - 1);
    return available === 0;
  });
  const accepted = findings.length - kept.length;
  if (unattached === "off") return { findings: kept, accepted };
  const idle = baseline.entries.flatMap((entry, index): readonly Finding[] => {
    const unused = Math.min(entry.times, left.get(keyOf(entry)) ?? 0);
    if (unused === 0 || !isChecked(entry.rule, entry.file)) return [];
    left.set(keyOf(entry), (left.get(keyOf(entry)) ?? 0) - unused);
    return [{ rule: "note/unattached", severity: unattached, ...idleEntry(baseline, entry, index, unused) }];
  });
  return { findings: [...kept, ...idle], accepted };
}

type Key = Pick<BaselineEntry, "rule" | "file" | "text">;

function keyOf({ rule, file, text }: Key): string {
  return JSON.stringify([rule, file, text]);
}

function idleEntry(
  baseline: Baseline,
  { rule, file, text, times, span }: BaselineEntry,
  index: number,
  unused: number,
): Omit<Finding, "rule" | "severity"> {
  const isIdle = unused === times;
  const found = isIdle ? `\`${rule}\` finds nothing` : `\`${rule}\` finds only ${times - unused} of ${times}`;
  const line = text === "" ? "at an empty line" : `at \`${text}\``;
  return {
    span,
    message: `there is nothing to accept: ${found} ${line} in ${file}; ${isIdle ? "take the entry out" : `write ${times - unused}`}`,
    related: [],
    fixes: [
      isIdle
        ? { title: "Take the entry out", edits: editsOf(baseline, ["accepted", index], undefined) }
        : {
            title: `Accept ${times - unused}`,
            edits: editsOf(baseline, ["accepted", index, "times"], times - unused),
          },
    ],
  };
}

function editsOf({ file, text }: Baseline, path: (string | number)[], value: unknown): readonly Edit[] {
  return modify(text, path, value, {}).map(({ offset, length, content }) => ({
    span: { file, start: offset, end: offset + length },
    text: content,
  }));
}
