import { describe, expect, it } from "vitest";
import { explainAt } from "../../../src-core/explain/explain-at.ts";
import { type Scene, sampleScene, sceneOf } from "./scene.ts";

/** Lines that an editor's hover box shows without scrolling (common practice, no source). */
const mostLines = 14;

/** What is wrong with the hovers of a project at every `step`-th offset. */
function faultsIn({ files, facts }: Scene, step = 1): string[] {
  const faults: string[] = [];
  for (const [file, text] of Object.entries(files)) {
    for (let offset = 0; offset <= text.length; offset += step) {
      const hover = explainAt(facts, file, offset);
      if (hover === undefined) continue;
      const { markdown, span } = hover;
      const place = `${file}:${offset}`;
      if (markdown.split("\n").length > mostLines) faults.push(`${place} is too long: ${markdown}`);
      if (/undefined|NaN|Infinity|\[object/.test(markdown)) faults.push(`${place} is no text: ${markdown}`);
      if (span.file !== file || span.start > offset || span.end < offset)
        faults.push(`${place} lies elsewhere`);
    }
  }
  return faults;
}

describe("a hover at every offset", () => {
  for (const name of ["ferry-c", "ferry-c-faults", "ferry-sketch", "ferry-sketch-faults"]) {
    it(`is short and about its place in ${name}`, () => expect(faultsIn(sampleScene(name))).toEqual([]));
  }
  it("never fails in broken code", () => {
    const { files } = sampleScene("ferry-c");
    const text = files["ps2.c"] ?? "";
    for (const part of [0.3, 0.6, 0.9]) {
      const broken = { ...files, "ps2.c": text.slice(0, Math.floor(text.length * part)) };
      expect(faultsIn(sceneOf(broken), 7)).toEqual([]);
      const holes = text.replace(/[({;]/g, (sign, at: number) => (at % 7 === 0 ? "" : sign));
      const torn = { ...files, "ps2.c": holes.slice(0, Math.floor(text.length * part)) };
      expect(faultsIn(sceneOf(torn), 7)).toEqual([]);
    }
  });
});
