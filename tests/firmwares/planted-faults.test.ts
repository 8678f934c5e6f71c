import { describe, expect, test } from "vitest";
import type { Span } from "../../src-core/finding.ts";
import { hostOfFiles } from "../../src-core/reader/source-host.ts";
import { createService } from "../../src-core/service/create-service.ts";
import type { SimulatedRun } from "../../src-core/simulation-result.ts";
import { loadGrammar } from "../src-core/reader/syntax/load-grammar.ts";
import type { PlantedFault } from "./planted/planted-fault.ts";
import { plantedFaults } from "./planted/planted-faults.ts";
import { type Files, lineAt, numberOf, wrongVersion } from "./wrong-version.ts";

const grammar = await loadGrammar();

/** The run in which the fault has to show. */
function simulated(fault: PlantedFault, files: Files): SimulatedRun {
  const { style, mouse = "plain", pc = "rts-toggle", stroke = "nudge" } = fault;
  const service = createService({ host: hostOfFiles(files), grammar, startName: style });
  const [project] = service.projectsAt(".");
  const result = service.simulate(project?.id ?? "", { mouse, pc, stroke, seed: 1 });
  if (result.kind === "cannot") throw new Error(result.message);
  return result.run;
}

/** What was told, one line each: `rule file:line value`. */
function toldBy({ verdict }: SimulatedRun, files: Files): readonly string[] {
  return verdict.failures.map(({ rule, span, measured, message }) => {
    const where = span === undefined ? "nowhere" : placeOf(span, files);
    return [rule, where, measured?.value ?? "", message].join(" | ");
  });
}

function placeOf({ file, start }: Span, files: Files): string {
  return `${file}:${lineAt(files[file] ?? "", start)}`;
}

describe.each([...new Set(plantedFaults.map(({ rule }) => rule))])("%s", (rule) => {
  test.each(plantedFaults.filter((fault) => fault.rule === rule))("$style: $title", (fault) => {
    const { line, measured } = fault;
    const lines = line === "nowhere" ? [] : [line].flat();
    const files = wrongVersion(fault);
    const run = simulated(fault, files);
    const told = toldBy(run, files).join("\n");
    const expected = lines.map((each) => `${each.file}:${numberOf(each, files)}`);
    const found = run.verdict.failures.find(
      ({ rule: of, span }) =>
        of === rule && (line === "nowhere" || (span && expected.includes(placeOf(span, files)))),
    );
    expect(found, `at ${expected.join(" or ") || "any line"}; told:\n${told}`).toBeDefined();
    if (measured === undefined) return;
    const value = found?.measured?.value ?? Number.NaN;
    expect(value, `${measured.why}; told:\n${told}`).toBeGreaterThanOrEqual(measured.least);
    expect(value, `${measured.why}; told:\n${told}`).toBeLessThanOrEqual(measured.most);
  });
});
