import { loadGrammar } from "../../server/load-grammar.ts";
import { keepResultsYoung } from "../../server/young-results.ts";
import { benchCosts, everyStroke } from "./bench-costs.ts";
import { checkCosts } from "./check-costs.ts";
import { runCosts } from "./run-costs.ts";
import { trialCosts } from "./trial-costs.ts";

/**
 * `npm run bench`: what a check and a run of the author's code cost, beside something else that is measured in the
 * same run, so that the ratio means something on any machine. `--smoke` measures little and only shows that it runs;
 * with `--complete` a compiler that is missing is a failure. It runs as the language server's process does.
 */
keepResultsYoung();
const isSmoke = process.argv.includes("--smoke");
const grammar = await loadGrammar();
process.stdout.write(await checkCosts(grammar, isSmoke ? 3 : 40));
process.stdout.write(trialCosts(grammar, isSmoke ? 2 : 30));
const costs = await runCosts(grammar, isSmoke ? { rounds: 2, rows: 16 } : { rounds: 8, rows: 128 });
process.stdout.write(costs.text);
const runs = await benchCosts(
  grammar,
  isSmoke
    ? { strokes: ["nudge"], rounds: 2, shard: "1/54" }
    : { strokes: everyStroke, rounds: 5, shard: undefined },
);
process.stdout.write(runs.text);
const leftOut = [...costs.leftOut, ...runs.leftOut];
if (leftOut.length > 0 && process.argv.includes("--complete")) process.exitCode = 1;
