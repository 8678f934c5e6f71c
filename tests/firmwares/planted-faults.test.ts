import { describe, expect, test } from "vitest";
import type { PlantedFault, Style } from "./planted/planted-fault.ts";
import { plantedFaults } from "./planted/planted-faults.ts";
import { Workbench } from "./workbench.ts";
import { type Files, numberOf, placeOf, wrongVersion } from "./wrong-version.ts";

/** What is told of a version, by either of the two that tell. */
interface Told {
  readonly rule: string;
  readonly place: string;
  readonly measured: number | undefined;
  readonly message: string;
}

const benches = new Map<Style, Workbench>();

function benchOf(style: Style): Workbench {
  const bench = benches.get(style) ?? new Workbench(style);
  benches.set(style, bench);
  return bench;
}

function toldBy(fault: PlantedFault, files: Files): readonly Told[] {
  const { style, foundBy = "simulate", mouse = "plain", pc = "rts-toggle", stroke = "nudge" } = fault;
  const bench = benchOf(style);
  if (foundBy === "check")
    return bench.check(files).map(({ rule, span, message }) => {
      return { rule, place: placeOf(span, files), measured: undefined, message };
    });
  return bench.run(files, { mouse, pc, stroke }).verdict.failures.map(({ rule, span, measured, message }) => {
    return { rule, place: placeOf(span, files), measured: measured?.value, message };
  });
}

describe.each([...new Set(plantedFaults.map(({ rule }) => rule))])("%s", (rule) => {
  test.each(plantedFaults.filter((fault) => fault.rule === rule))("$style: $title", (fault) => {
    const { line, measured } = fault;
    const files = wrongVersion(fault);
    const told = toldBy(fault, files);
    const all = told.map(({ rule: of, place, measured: value = "", message }) =>
      [of, place, value, message].join(" | "),
    );
    const words = `told:\n${all.join("\n")}`;
    const places = [line].flat().map((each) => `${each.file}:${numberOf(each, files)}`);
    const found = told.find((each) => each.rule === rule && places.includes(each.place));
    expect(found, `at ${places.join(" or ")}; ${words}`).toBeDefined();
    if (measured === undefined) return;
    const value = found?.measured ?? Number.NaN;
    expect(value, `${measured.why}; ${words}`).toBeGreaterThanOrEqual(measured.least);
    expect(value, `${measured.why}; ${words}`).toBeLessThanOrEqual(measured.most);
  });
});
