import { beforeAll, describe, expect, test } from "vitest";
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
    const where = span === undefined ? "nowhere" : `${span.file}:${lineAt(files[span.file] ?? "", span.start)}`;
    return [rule, where, measured?.value ?? "", message].join(" | ");
  });
}

describe.each([...new Set(plantedFaults.map(({ rule }) => rule))])("%s", (rule) => {
  test.each(plantedFaults.filter((fault) => fault.rule === rule))("$style: $title", (fault) => {
    const { line, measured } = fault;
    const files = wrongVersion(fault);
    const run = simulated(fault, files);
    const told = toldBy(run, files).join("\n");
    const expected = line === "nowhere" ? undefined : numberOf(line, files);
    const found = run.verdict.failures.find(
      ({ rule: of, span }) =>
        of === rule &&
        (line === "nowhere" ||
          (span?.file === line.file && lineAt(files[span.file] ?? "", span.start) === expected)),
    );
    expect(found, `at line ${expected}; told:\n${told}`).toBeDefined();
    if (measured === undefined) return;
    const value = found?.measured?.value ?? Number.NaN;
    expect(value, `${measured.why}; told:\n${told}`).toBeGreaterThanOrEqual(measured.least);
    expect(value, `${measured.why}; told:\n${told}`).toBeLessThanOrEqual(measured.most);
  });
});
