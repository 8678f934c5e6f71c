import { readFileSync } from "node:fs";
import { Language, Parser } from "web-tree-sitter";
import { loadGrammar } from "../../server/load-grammar.ts";
import { createService } from "../../src-core/service/create-service.ts";
import { grammarFileNames } from "../../src-core/service/grammar.ts";
import { longFirmware } from "./long-firmware.ts";

/**
 * `npm run bench`: what a check costs beside the bare parse of the same text in the same run, so that the ratio
 * means something on any machine. `--smoke` measures little and only shows that it runs.
 */

const rounds = process.argv.includes("--smoke") ? 3 : 40;
const text = longFirmware("sample-workspace/ferry-c", 1000);
const grammar = await loadGrammar();
const parser = await bareParser();

let current = text;
const host = {
  readText: (path: string) =>
    path === "firmware.c" ? current : path === "edgewise.json" ? settings : undefined,
  listFolder: (path: string) => (path === "." ? ["edgewise.json", "firmware.c"] : []),
};
const settings = readFileSync("sample-workspace/ferry-c/edgewise.json", "utf8");

const parse = median(rounds, () => parser.parse(text)?.delete());
const full = median(Math.ceil(rounds / 4), () => {
  const service = createService({ host, grammar, startName: "bench" });
  for (const { id } of service.projectsAt(".")) service.check(id);
});
const service = createService({ host, grammar, startName: "bench" });
const ids = service.projectsAt(".").map(({ id }) => id);
const found = ids.map((id) => service.check(id));
const versions = editsOf(text);
let turn = 0;
const recheck = median(rounds, () => {
  current = versions[turn++ % versions.length] ?? text;
  for (const id of ids) service.check(id);
});

process.stdout.write(`
${text.split("\n").length} lines, ${text.length} characters, ${found.flatMap(({ findings }) => findings).length} findings, ${found.flatMap(({ notUnderstood }) => notUnderstood).length} not understood; medians of ${rounds} rounds

  bare web-tree-sitter parse of the whole text   ${show(parse, parse)}
  check from text, nothing known before          ${show(full, parse)}
  check again after a one-character edit         ${show(recheck, parse)}
`);

/** The text with one digit changed in turn near its start, middle and end, where a delay or a mask stands. */
function editsOf(whole: string): readonly string[] {
  return [0.1, 0.5, 0.9].flatMap((part) => {
    const start = Math.floor(whole.length * part);
    const digit = /(?<=[ (]\d*)[1-8](?=\d*[;)])/.exec(whole.slice(start));
    if (digit === null) return [];
    const at = start + digit.index;
    return [`${whole.slice(0, at)}9${whole.slice(at + 1)}`, whole];
  });
}

async function bareParser(): Promise<Parser> {
  const language = await Language.load(readFileSync(new URL(grammarFileNames.grammar, import.meta.url)));
  const made = new Parser();
  made.setLanguage(language);
  return made;
}

/** Milliseconds of the median round. The first rounds are not counted: the engine is still warming up. */
function median(count: number, work: () => void): number {
  for (let round = 0; round < Math.min(count, 5); round++) work();
  const times = Array.from({ length: count }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return times[Math.floor(times.length / 2)] ?? 0;
}

function show(milliseconds: number, unit: number): string {
  return `${milliseconds.toFixed(1).padStart(8)} ms   ${(milliseconds / unit).toFixed(2).padStart(6)} times the parse`;
}
