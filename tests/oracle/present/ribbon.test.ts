import { spawnSync } from "node:child_process";
import { expect, test } from "vitest";
import { ribbonOf } from "../../../src-core/present/ribbon/ribbon-of.ts";
import { ribbonAsSvg, svgCanvas } from "../../../src-core/present/svg/ribbon-as-svg.ts";
import { linesOf, runOf, sampleFiles } from "../../src-core/service/sample-run.ts";

/** What an XML parser that is not ours reads: Python's, which is expat. Refuses what is not well-formed. */
const reader = `
import sys, json, xml.etree.ElementTree as tree
root = tree.fromstring(sys.stdin.buffer.read())
svg = "{http://www.w3.org/2000/svg}"
print(json.dumps({
  "root": root.tag == svg + "svg",
  "foreign": sorted({each.tag for each in root.iter() if not each.tag.startswith(svg)}),
  "title": root.findtext(svg + "title"),
  "description": root.findtext(svg + "desc"),
  "texts": [each.text for each in root.iter(svg + "text")],
  "ids": [each.get("id") for each in root.iter() if each.get("id")],
}))
`;

interface Read {
  readonly root: boolean;
  readonly foreign: readonly string[];
  readonly title: string;
  readonly description: string;
  readonly texts: readonly string[];
  readonly ids: readonly string[];
}

function read(svg: string): Read {
  const { status, stdout, stderr, error } = spawnSync("python3", ["-c", reader], {
    input: svg,
    encoding: "utf8",
    maxBuffer: 64 * 1024 * 1024,
  });
  if (status !== 0) throw new Error(`python3: ${error?.message ?? stderr}`);
  return JSON.parse(stdout);
}

test.each([
  ["ferry-c", "circle", undefined],
  ["ferry-c", "all-at-once", { from: 820e9, to: 832e9 }],
  ["ferry-c-faults", "nudge", undefined],
  ["ferry-sketch", "wheel", undefined],
])("Python's XML parser reads the picture of %s with the stroke %s", (name, stroke, window) => {
  const files = sampleFiles(name);
  const run = runOf(files, { stroke });
  const project = `${name} <&"'>`;
  const ribbon = ribbonOf(project, run, linesOf(files), svgCanvas, window);
  const { root, foreign, title, description, texts, ids } = read(ribbonAsSvg(ribbon));
  expect({ root, foreign }).toEqual({ root: true, foreign: [] });
  expect(title).toBe(ribbon.title);
  expect(title).toContain(project);
  expect(description).toBe(ribbon.description);
  expect(new Set(ids).size).toBe(ids.length);
  for (const panel of ribbon.panels) expect(texts).toContain(panel.title);
  for (const [, figure] of ribbon.figures) expect(texts.join(" ")).toContain(figure);
});
