import { loadGrammar } from "../../../server/load-grammar.ts";
import { compareRuns } from "./compare-runs.ts";
import { type Campaign, complaintOf, csmithCampaign, refusedByReader, summaryOf } from "./csmith-campaign.ts";
import { csmithProgram, traced } from "./csmith-programs.ts";
import { sourceReader } from "./read-source.ts";

/**
 * `npm run oracle:csmith -- --seed N --count K`: compares K programs of csmith from seed N on, tells of each that
 * does not agree, and ends with the sums. Exit status 1 when a checksum differs.
 */

const usage = "Usage: npm run oracle:csmith -- [--seed N] [--count K]   (N and K are whole numbers)\n";
const asked = argumentsOf(process.argv.slice(2));
if (asked === undefined) {
  process.stderr.write(usage);
  process.exit(2);
}

const grammar = await loadGrammar();
const campaign = await csmithCampaign(grammar, asked, (seed, comparison) => {
  const complaint = complaintOf(seed, comparison);
  if (complaint !== undefined) process.stdout.write(`${complaint}\n`);
});
await tellFirstDifferences(campaign);
tellMissteps(campaign);
process.stdout.write(
  `${campaign.drawnAnew.length} drawn anew; ${refusedByReader(campaign)} of the refused were not understood by the reader\n`,
);
process.stdout.write(`${summaryOf(campaign)}\n`);
process.exitCode = campaign.results.some(({ comparison }) => comparison.kind === "mismatch") ? 1 : 0;

function argumentsOf(words: readonly string[]): { firstSeed: number; count: number } | undefined {
  let firstSeed = 3_000_000;
  let count = 200;
  for (let at = 0; at < words.length; at += 2) {
    const value = Number(words[at + 1]);
    if (words[at + 1] === undefined || !Number.isInteger(value) || value < 0) return undefined;
    if (words[at] === "--seed") firstSeed = value;
    else if (words[at] === "--count") count = value;
    else return undefined;
  }
  process.stdout.write(`--seed ${firstSeed} --count ${count}\n`);
  return { firstSeed, count };
}

/** For programs that differ: the first variable that does. */
async function tellFirstDifferences({ results }: Campaign): Promise<void> {
  for (const { seed, comparison } of results) {
    if (comparison.kind !== "mismatch") continue;
    const again = await compareRuns(traced(await csmithProgram(seed)), sourceReader(grammar));
    if (again.kind !== "mismatch") continue;
    const got = again.got.split("\n");
    const lines = again.expected.split("\n").map((line, index) => ({ line, got: got[index] ?? "nothing" }));
    const first = lines.find((pair) => pair.line !== pair.got);
    process.stdout.write(
      `seed ${seed}: first difference: compiled ${first?.line}, interpreted ${first?.got}\n`,
    );
  }
}

/** csmith avoids undefined behaviour, so that these should be none. */
function tellMissteps({ results }: Campaign): void {
  const seeds = new Map<string, number[]>();
  for (const { seed, comparison } of results) {
    if (comparison.kind !== "agree") continue;
    for (const kind of new Set(comparison.missteps.map((misstep) => misstep.kind))) {
      seeds.set(kind, [...(seeds.get(kind) ?? []), seed]);
    }
  }
  for (const [kind, its] of seeds) {
    process.stdout.write(`misstep ${kind} in ${its.length} programs: ${its.slice(0, 5).join(", ")}\n`);
  }
}
