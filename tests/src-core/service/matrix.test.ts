import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { MatrixChoice } from "../../../src-core/matrix-result.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { createService } from "../../../src-core/service/create-service.ts";
import { loadGrammar } from "../reader/syntax/load-grammar.ts";

const grammar = await loadGrammar();
const folder = "sample-workspace/ferry-c";
const ferry: Readonly<Record<string, string>> = Object.fromEntries(
  readdirSync(folder).map((file) => [file, readFileSync(`${folder}/${file}`, "utf8")]),
);
const usual: MatrixChoice = { mice: undefined, pcs: undefined, strokes: undefined };

function serviceOver(files: Readonly<Record<string, string>>) {
  const service = createService({ host: hostOfFiles(files), grammar, startName: "adapter" });
  return { service, project: service.projectsAt(".")[0]?.id ?? "" };
}

/** The names of the plan of the sample firmware, or why there is none. */
function planned(choice: Partial<MatrixChoice>, simulate?: object) {
  const settings = JSON.parse(ferry["edgewise.json"] ?? "");
  const files = { ...ferry, "edgewise.json": JSON.stringify({ ...settings, simulate }) };
  const { service, project } = serviceOver(files);
  const result = service.planMatrix(project, { ...usual, ...choice });
  if (result.kind === "cannot") return result.message;
  const names = (list: readonly { readonly name: string }[]) => list.map(({ name }) => name);
  const { mice, pcs, strokes } = result.plan;
  return { mice: names(mice), pcs: names(pcs), strokes: names(strokes) };
}

describe("what a matrix consists of", () => {
  test("what is asked for, in that order, each once", () => {
    expect(
      planned({ mice: ["wheel", "plain", "wheel"], pcs: ["patient"], strokes: ["click", "rest"] }),
    ).toEqual({
      mice: ["wheel", "plain"],
      pcs: ["patient"],
      strokes: ["click", "rest"],
    });
  });

  test("else what edgewise.json names", () => {
    const simulate = {
      mice: ["plain"],
      pcs: ["hurried"],
      strokes: ["quay"],
      ownStrokes: { quay: [{ right: 3, ms: 40 }] },
    };
    expect(planned({}, simulate)).toEqual({ mice: ["plain"], pcs: ["hurried"], strokes: ["quay"] });
    expect(planned({ strokes: ["rest"] }, simulate)).toMatchObject({ mice: ["plain"], strokes: ["rest"] });
  });

  test("else every mouse, every PC, a few strokes and the project's own", () => {
    const plan = planned({}, { ownStrokes: { quay: [] } });
    expect(plan).toMatchObject({
      pcs: ["rts-toggle", "dtr-rts-toggle", "plug-and-play", "hurried", "patient", "second-reset"],
      strokes: ["quay", "nudge", "fast-diagonals", "flick", "click", "all-at-once"],
    });
    expect(plan).toHaveProperty("mice.length", 18);
  });

  test.each([
    [{ mice: ["plian"] }, undefined, /^there is no mouse "plian"; did you mean plain\?$/],
    [{ pcs: [""] }, undefined, /^there is no PC ""; there is rts-toggle, /],
    [
      {},
      { strokes: ["clikc"] },
      /^edgewise\.json: `simulate\.strokes\[0\]`: `clikc` is not known; did you mean `click`\?$/,
    ],
  ])("a name that there is not: %j %j", (choice, simulate, message) => {
    expect(planned(choice, simulate)).toMatch(message);
  });

  test("nothing where the firmware cannot be run at all", () => {
    const { service, project } = serviceOver({ "main.c": "int main(void) { for (;;) {} }\n" });
    const result = service.planMatrix(project, usual);
    expect(result).toMatchObject({ kind: "cannot", message: expect.stringContaining("chip is not known") });
  });
});

test("a cell's run is that of a simulation with the same names and seed", () => {
  const { service, project } = serviceOver(ferry);
  const cell = { mouse: "jittering-clock", pc: "hurried", strokes: ["click", "nowhere"], seed: 7 };
  const { outcomes, ...where } = service.runCell(project, cell);
  expect(where).toEqual({ mouse: "jittering-clock", pc: "hurried" });
  const [click, nowhere] = outcomes;
  const alone = service.simulate(project, { ...where, stroke: "click", seed: 7 });
  if (alone.kind === "cannot") throw new Error(alone.message);
  const { details, sent, received, ...rest } = alone.run;
  expect([details.edges, sent, received].every(({ length }) => length > 0)).toBe(true);
  expect(click).toEqual({ kind: "run", stroke: "click", run: rest });
  expect(nowhere).toMatchObject({ kind: "cannot", message: expect.stringContaining('no stroke "nowhere"') });
});
