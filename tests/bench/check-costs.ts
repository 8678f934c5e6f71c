import { readFileSync } from "node:fs";
import { Language, Parser } from "web-tree-sitter";
import type { Grammar } from "../../src-core/reader/syntax/grammar/grammar.ts";
import { createService } from "../../src-core/service/create-service.ts";
import { grammarFileNames } from "../../src-core/service/grammar.ts";
import { longFirmware } from "./long-firmware.ts";
import { inTurn, median, type Times } from "./measure.ts";

/** A check and a re-check beside the bare parse of the same text, as a table. */
export async function checkCosts(grammar: Grammar, rounds: number): Promise<string> {
  const text = longFirmware("sample-workspace/ferry-c", 1000);
  const parser = await bareParser();

  let current = text;
  const host = {
    readText: (path: string) =>
      path === "firmware.c" ? current : path === "edgewise.json" ? settings : undefined,
    listFolder: (path: string) => (path === "." ? ["edgewise.json", "firmware.c"] : []),
  };
  const settings = readFileSync("sample-workspace/ferry-c/edgewise.json", "utf8");

  const service = createService({ host, grammar, startName: "bench" });
  const ids = service.projectsAt(".").map(({ id }) => id);
  const found = ids.map((id) => service.check(id));
  const versions = editsOf(text);
  let turn = 0;

  const places = wordsOf(text);
  const parseOnce = () => parser.parse(text)?.delete();
  // As somebody types: one check after the other, and now and then a hover.
  const [parse = [], recheck = [], hover = []] = inTurn(rounds, [
    parseOnce,
    () => {
      current = versions[turn++ % versions.length] ?? text;
      for (const id of ids) service.check(id);
    },
    () => {
      const start = performance.now();
      for (const offset of places) for (const id of ids) service.hover(id, "firmware.c", offset);
      return (performance.now() - start) / places.length;
    },
  ]);
  const [parseBeside = [], full = []] = inTurn(rounds, [
    parseOnce,
    () => {
      current = text;
      const fresh = createService({ host, grammar, startName: "bench" });
      for (const { id } of fresh.projectsAt(".")) fresh.check(id);
    },
  ]);
  const row = (times: Times, beside = parse) =>
    [median, fastest].map((pick) => column(pick(times), pick(beside))).join("   ");

  const findings = found.flatMap((result) => result.findings).length;
  const notUnderstood = found.flatMap((result) => result.notUnderstood).length;
  return `
${text.split("\n").length} lines, ${text.length} characters; ${findings} findings, ${notUnderstood} not understood
${rounds} rounds, each in turn with the parse${" ".repeat(14)}median             fastest

bare web-tree-sitter parse of the whole text  ${row(parse)}
check from text, nothing known before         ${row(full, parseBeside)}
check again after a one-character edit        ${row(recheck)}
one hover, mean of ${String(places.length).padEnd(3)} words of a checked text  ${row(hover)}
`;
}

/**
 * The text with one digit more, in turn near its start, middle and end, where a delay or a mask stands: all behind it moves.
 * Every second version is the text as it was.
 */
function editsOf(whole: string): readonly string[] {
  return [0.1, 0.5, 0.9].flatMap((part) => {
    const start = Math.floor(whole.length * part);
    const digit = /(?<=[ (]\d*)[1-8](?=\d*[;)])/.exec(whole.slice(start));
    if (digit === null) return [];
    const at = start + digit.index;
    return [`${whole.slice(0, at)}9${whole.slice(at)}`, whole];
  });
}

/** Offsets of words spread over the text, so that most kinds of hovers are among them. */
function wordsOf(text: string): readonly number[] {
  const all = [...text.matchAll(/\b\w+\b/g)].map(({ index }) => index);
  const every = Math.max(1, Math.floor(all.length / 100));
  return all.filter((_, at) => at % every === 0).slice(0, 100);
}

async function bareParser(): Promise<Parser> {
  const language = await Language.load(readFileSync(new URL(grammarFileNames.grammar, import.meta.url)));
  const made = new Parser();
  made.setLanguage(language);
  return made;
}

function fastest(times: Times): number {
  return times[0] ?? 0;
}

function column(milliseconds: number, unit: number): string {
  return `${milliseconds.toFixed(1).padStart(7)} ms ${(milliseconds / unit).toFixed(1).padStart(5)} x`;
}
