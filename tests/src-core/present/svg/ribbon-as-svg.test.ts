import { describe, expect, test } from "vitest";
import { ribbonOf } from "../../../../src-core/present/ribbon/ribbon-of.ts";
import { fitting, wrapped } from "../../../../src-core/present/svg/fit.ts";
import { ribbonAsSvg, svgCanvas } from "../../../../src-core/present/svg/ribbon-as-svg.ts";
import { linesOf, runOf, sampleFiles } from "../../service/sample-run.ts";

const files = sampleFiles("ferry-c");
const run = runOf(files, { stroke: "click" });

const drawn = (project = "quay") => ribbonAsSvg(ribbonOf(project, run, linesOf(files), svgCanvas, undefined));

describe("the picture of a run", () => {
  const svg = drawn();

  // SVG 1.1, 5.4 and 23; WAI-ARIA 1.2: an image is named by its title and described by its description.
  test("has a title and a description for those who do not see it", () => {
    expect(svg).toMatch(
      /^<\?xml version="1\.0" encoding="UTF-8"\?>\n<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" /,
    );
    expect(svg).toContain('role="img" aria-labelledby="ribbon-title ribbon-description"');
    expect(svg).toContain('<title id="ribbon-title">quay: stroke click, mouse plain, PC rts-toggle</title>');
    expect(svg).toMatch(
      /<desc id="ribbon-description">The run passed\. .*buttons: \d+ changes in, \d+ out\..*<\/desc>/,
    );
  });

  test("has a thread for each report that carried a click", () => {
    const threads = svg.match(/<path class="(thread|slowest)"/g) ?? [];
    // Both panels together have each of them at least once.
    expect(threads.length).toBeGreaterThanOrEqual(run.details.threads.length);
    expect(run.details.threads.length).toBe(run.verdict.figures.clicks?.out);
  });

  test("has colours for light and dark", () => {
    const [light, dark] = svg.split("@media (prefers-color-scheme:dark)");
    const coloured = (sheet = "") =>
      new Set([...sheet.matchAll(/(\.?[\w-]+)\{(?:fill|stroke|stop-color):#/g)].map(([, name]) => name));
    expect(coloured(dark)).toEqual(coloured(light));
    expect(coloured(dark).size).toBeGreaterThan(20);
  });

  test("holds no number that is none", () => {
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  });

  test("escapes what a name may hold", () => {
    expect(drawn('a<b & "c"\u0007')).toContain('<title id="ribbon-title">a&lt;b &amp; "c"\ufffd: stroke');
  });

  test("is the same each time", () => {
    expect(drawn()).toBe(svg);
  });
});

describe("text", () => {
  test("the longest that fits", () => {
    expect(fitting(["F4 enable reporting", "F4"], 200)).toBe("F4 enable reporting");
    expect(fitting(["F4 enable reporting", "F4"], 40)).toBe("F4");
    expect(fitting(["F4 enable reporting", "F4"], 8)).toBeUndefined();
  });

  test("is broken between words, and a word that is too long stays whole", () => {
    expect(wrapped("hold the clock low for longer", 100)).toEqual(["hold the clock", "low for longer"]);
    expect(wrapped("an extraordinarily_long_name_of_a_function here", 100)).toEqual([
      "an",
      "extraordinarily_long_name_of_a_function",
      "here",
    ]);
    expect(wrapped("", 100)).toEqual([]);
  });
});
