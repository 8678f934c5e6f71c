import type { Grammar } from "../../../src-core/reader/syntax/grammar/grammar.ts";
import { type Comparison, compareRuns } from "./compare-runs.ts";
import { csmithProgram } from "./csmith-programs.ts";
import { sourceReader } from "./read-source.ts";

/** Compared programs by how the comparison ended. */
export interface Campaign {
  readonly results: readonly { readonly seed: number; readonly comparison: Comparison }[];
  /** Seeds drawn anew: their programs do not end, do not fit, or hold next to nothing. */
  readonly drawnAnew: readonly number[];
}

/** Shorter programs return a constant and little more. */
const fewestCharacters = 2500;
/** Compilers that run beside each other. */
const width = 2;

/**
 * Compares `count` programs of csmith, of the seeds from `firstSeed` on. `seen` hears of each as it is done.
 */
export async function csmithCampaign(
  grammar: Grammar,
  { firstSeed, count }: { readonly firstSeed: number; readonly count: number },
  seen: (seed: number, comparison: Comparison) => void,
): Promise<Campaign> {
  const results: { seed: number; comparison: Comparison }[] = [];
  const drawnAnew: number[] = [];
  const read = sourceReader(grammar);
  const compare = async (seed: number): Promise<Comparison> => {
    const source = await csmithProgram(seed);
    if (source.text.length < fewestCharacters) return { kind: "not-comparable", message: "too short" };
    return compareRuns(source, read);
  };
  for (let seed = firstSeed; results.length < count; seed += width) {
    const seeds = Array.from({ length: width }, (_, index) => seed + index);
    const compared = await Promise.all(seeds.map(compare));
    for (const [index, comparison] of compared.entries()) {
      const its = seed + index;
      if (comparison.kind === "not-comparable") {
        // A program that the compiler rejects would mean that the set-up is wrong.
        if (comparison.message.startsWith("not-compiled")) throw new Error(`${its}: ${comparison.message}`);
        drawnAnew.push(its);
      } else if (results.length < count) {
        results.push({ seed: its, comparison });
        seen(its, comparison);
      }
    }
  }
  return { results, drawnAnew };
}

/** The last line of a campaign: `K programs, A agree, M mismatch, R refused`. */
export function summaryOf({ results }: Campaign): string {
  const of = (kind: Comparison["kind"]) =>
    results.filter(({ comparison }) => comparison.kind === kind).length;
  return `${results.length} programs, ${of("agree")} agree, ${of("mismatch")} mismatch, ${of("refused")} refused`;
}

/** Refusals because some of the program was not understood. */
export function refusedByReader({ results }: Campaign): number {
  return results.filter(({ comparison }) => comparison.kind === "refused" && comparison.byReader).length;
}

/** What is wrong with one program, for people; undefined where both runs agree. */
export function complaintOf(seed: number, comparison: Comparison): string | undefined {
  switch (comparison.kind) {
    case "agree":
    case "not-comparable":
      return undefined;
    case "mismatch":
      return `seed ${seed}: mismatch: compiled ${comparison.expected}, interpreted ${comparison.got}`;
    case "refused":
      return `seed ${seed}: refused${comparison.byReader ? " (not understood)" : ""}: ${comparison.message}`;
  }
}
