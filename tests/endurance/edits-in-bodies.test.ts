import { describe, expect, it } from "vitest";
import { createService } from "../../src-core/service/create-service.ts";
import { randomSeed } from "../random-seed.ts";
import { loadGrammar } from "../src-core/reader/syntax/load-grammar.ts";
import { ChangingHost } from "./changing-host.ts";
import { type SampleProject, sampleProjects, sourcesOf, styleProjects } from "./sample-projects.ts";
import { seeded } from "./seeded.ts";

const grammar = await loadGrammar();
const seed = randomSeed("EDGEWISE_SEED", 1);
const edits = 40;
const offsets = 12;

/**
 * Edits of the kind after which most of what is known is kept: numbers, statements and empty lines in firmwares that
 * stay whole. Some are taken back by the next one.
 */
describe(`edits in bodies, EDGEWISE_SEED=${seed}`, () => {
  for (const project of [...sampleProjects, ...styleProjects]) {
    it(`${project.name}: after each of ${edits}, findings, hovers and lenses are those of reading anew`, () => {
      const random = seeded(seed);
      const host = new ChangingHost(project.files);
      const service = createService({ host, grammar, startName: project.name });
      const [entry] = service.projectsAt(".");
      if (entry === undefined) throw new Error("no project found");
      service.check(entry.id);
      for (const { file, text, what } of editsOf(project, random)) {
        const before = host.readText(file) ?? "";
        host.write(file, text);
        const kept = service.check(entry.id);
        const anew = createService({ host, grammar, startName: project.name });
        expect([what, ...anew.projectsAt(".").map(({ id }) => anew.check(id))]).toEqual([what, kept]);
        for (let count = 0; count < offsets; count += 1) {
          const at = Math.floor(random() * text.length);
          expect([what, at, service.hover(entry.id, file, at)]).toEqual([
            what,
            at,
            anew.hover(entry.id, file, at),
          ]);
        }
        expect([what, service.lenses(entry.id, file)]).toEqual([what, anew.lenses(entry.id, file)]);
        if (random() < 0.3) host.write(file, before);
      }
    });
  }
});

interface TextEdit {
  readonly file: string;
  readonly text: string;
  readonly what: string;
}

function* editsOf(project: SampleProject, random: () => number): Generator<TextEdit> {
  const texts = new Map(sourcesOf(project));
  const files = [...texts.keys()];
  const pick = <Item>(items: readonly Item[]): Item | undefined => items[Math.floor(random() * items.length)];
  for (let count = 0; count < edits; count += 1) {
    const file = pick(files) ?? "";
    const text = texts.get(file) ?? "";
    const kind = pick(["digit", "longer", "line", "comment", "twice", "without"] as const) ?? "digit";
    const [start, end, replacement] = changeOf(text, kind, pick);
    const changed = text.slice(0, start) + replacement + text.slice(end);
    texts.set(file, changed);
    yield { file, text: changed, what: `${count}: ${kind} in ${file} at ${start}` };
  }
}

type Pick = <Item>(items: readonly Item[]) => Item | undefined;

function changeOf(
  text: string,
  kind: string,
  pick: Pick,
): readonly [start: number, end: number, put: string] {
  const digit = pick([...text.matchAll(/(?<=[ (])\d+(?=[;)])/g)]);
  const statement = pick([...text.matchAll(/^ {4,}\w[^\n{}]*;\n/gm)]);
  const line = pick([...text.matchAll(/^/gm)]);
  switch (kind) {
    case "digit":
    case "longer":
      if (digit === undefined) break;
      return [digit.index, digit.index + 1, kind === "digit" ? "3" : "13"];
    case "comment":
      return [line?.index ?? 0, line?.index ?? 0, "// a remark\n"];
    case "twice":
    case "without":
      if (statement === undefined) break;
      return [
        statement.index,
        statement.index + statement[0].length,
        kind === "twice" ? statement[0].repeat(2) : "",
      ];
    default:
  }
  return [line?.index ?? 0, line?.index ?? 0, "\n"];
}
