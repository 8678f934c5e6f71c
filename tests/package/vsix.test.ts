import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { entriesOfZip } from "./zip-entries.ts";

let folder = "";
let names: readonly string[] = [];

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "edgewise-vsix-"));
  const vsix = join(folder, "edgewise.vsix");
  execFileSync("npm", ["run", "package", "--", "--out", vsix], { stdio: ["ignore", "inherit", "inherit"] });
  names = entriesOfZip(readFileSync(vsix));
});

afterAll(() => rmSync(folder, { recursive: true }));

/** As the repository has them; `tests/house/docs.test.ts` compares them with the rules. */
const rulePages = readdirSync("docs/rules", { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".md"))
  .map((name) => `extension/docs/rules/${name}`);

test("the package holds the two programs, the views, what they read, and the papers, the rules' pages among them; nothing else", () => {
  expect([...names].sort()).toEqual(
    [
      "[Content_Types].xml",
      "extension.vsixmanifest",
      "extension/LICENSE.txt",
      "extension/changelog.md",
      "extension/dist/edgewise.js",
      "extension/dist/edgewise.schema.json",
      "extension/dist/extension.cjs",
      "extension/dist/views/matrix.css",
      "extension/dist/views/matrix.js",
      "extension/dist/views/ribbon.css",
      "extension/dist/views/ribbon.js",
      "extension/dist/third-party-notices.txt",
      "extension/dist/tree-sitter-cpp.wasm",
      "extension/dist/web-tree-sitter.wasm",
      ...rulePages,
      "extension/package.json",
      "extension/readme.md",
    ].sort(),
  );
});
