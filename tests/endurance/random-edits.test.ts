import { describe, expect, it } from "vitest";
import { createService } from "../../src-core/service/create-service.ts";
import { randomSeed } from "../random-seed.ts";
import { loadGrammar } from "../src-core/reader/syntax/load-grammar.ts";
import { ChangingHost } from "./changing-host.ts";
import { sampleProjects, sourcesOf } from "./sample-projects.ts";
import { seeded } from "./seeded.ts";

const grammar = await loadGrammar();
const seed = randomSeed("EDGEWISE_SEED", 1);
const edits = 400;

describe(`random edits, EDGEWISE_SEED=${seed}`, () => {
  for (const project of sampleProjects) {
    it(`${project.name}: ${edits} edits, and what is kept gives what reading anew gives`, () => {
      const random = seeded(seed);
      const host = new ChangingHost(project.files);
      const service = createService({ host, grammar, startName: project.name });
      const [entry] = service.projectsAt(".");
      if (entry === undefined) throw new Error("no project found");
      const sources = new Map(sourcesOf(project));
      for (let turn = 0; turn < edits; turn++) {
        const names = [...sources.keys()];
        const file = names[Math.floor(random() * names.length)] ?? "";
        const text = edited(sources.get(file) ?? "", random);
        sources.set(file, text);
        host.write(file, text);
        const kept = service.check(entry.id);
        if (turn % 40 !== 0) continue;
        const anew = createService({ host, grammar, startName: project.name });
        expect(anew.projectsAt(".").map(({ id }) => anew.check(id))).toEqual([kept]);
      }
    });
  }

  it("bytes that are no UTF-8 are read as replacement characters", () => {
    const random = seeded(seed);
    for (const project of sampleProjects) {
      for (const [file, text] of sourcesOf(project)) {
        const bytes = Buffer.from(text);
        for (let count = 0; count < 30; count++) {
          bytes[Math.floor(random() * bytes.length)] = 0x80 + Math.floor(random() * 0x80);
        }
        const host = new ChangingHost({ ...project.files, [file]: bytes.toString("utf8") });
        const service = createService({ host, grammar, startName: project.name });
        for (const { id } of service.projectsAt(".")) {
          expect(service.check(id).files.length).toBeGreaterThan(0);
        }
      }
    }
  });
});

const scraps = [
  "{",
  "}",
  "(",
  ")",
  '"',
  "'",
  "/*",
  "*/",
  "#define X(",
  "#if 1",
  "\\\n",
  "##",
  ";",
  "@wire ",
  "\0",
  "é",
  "0x",
  "::",
  "<",
  "template<",
];

/** Leaves out, doubles, moves or puts in something. */
function edited(text: string, random: () => number): string {
  const at = Math.floor(random() * (text.length + 1));
  const length = Math.floor(random() * 12);
  const kind = random();
  if (kind < 0.35) return text.slice(0, at) + text.slice(at + length);
  if (kind < 0.7)
    return text.slice(0, at) + (scraps[Math.floor(random() * scraps.length)] ?? "") + text.slice(at);
  const from = Math.floor(random() * (text.length + 1));
  return text.slice(0, at) + text.slice(from, from + length) + text.slice(at);
}
