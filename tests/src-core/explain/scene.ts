import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { explainAt } from "../../../src-core/explain/explain-at.ts";
import type { Explanation } from "../../../src-core/explain/explanation.ts";
import type { Facts } from "../../../src-core/facts/facts.ts";
import { factsOf } from "../checks/harness.ts";

/** A project that is pointed into. */
export interface Scene {
  readonly files: Readonly<Record<string, string>>;
  readonly facts: Facts;
}

/** Marks the cursor in a piece of code. */
const cursor = "§";

export function sceneOf(files: Scene["files"]): Scene {
  return { files, facts: factsOf(files) };
}

/** A firmware of the sample workspace. */
export function sampleScene(name: string): Scene {
  const folder = join("sample-workspace", name);
  const names = readdirSync(folder).sort();
  return sceneOf(Object.fromEntries(names.map((each) => [each, readFileSync(join(folder, each), "utf8")])));
}

/** The hover at the cursor in a piece of code, which has to stand in the file exactly once. */
function hoverAt({ files, facts }: Scene, file: string, marked: string): Explanation | undefined {
  const piece = marked.replace(cursor, "");
  const text = files[file] ?? "";
  expect(text.split(piece).length, `${piece} stands once in ${file}`).toBe(2);
  return explainAt(facts, file, text.indexOf(piece) + marked.indexOf(cursor));
}

/** What the hover at each cursor holds: its heading first, then parts of its lines. */
export type Hovers = readonly (readonly [marked: string, heading: string, ...parts: readonly string[]])[];

export function hoverTests(scene: Scene, file: string, hovers: Hovers): void {
  for (const [marked, heading, ...parts] of hovers) {
    it(`${file}: ${marked}`, () => {
      const lines = hoverAt(scene, file, marked)?.markdown.split("\n") ?? [];
      expect(lines[0]).toBe(`**${heading}**`);
      for (const part of parts) expect(lines.join("\n")).toContain(part);
    });
  }
}

/** Places about which there is nothing to say. */
export function silenceTests(scene: Scene, file: string, marks: readonly string[]): void {
  for (const marked of marks) {
    it(`${file}: nothing at ${marked}`, () => {
      expect(hoverAt(scene, file, marked)?.markdown).toBeUndefined();
    });
  }
}
