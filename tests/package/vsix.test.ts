import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { entriesOfZip } from "./zip-entries.ts";

let folder = "";
let names: readonly string[] = [];
let size = 0;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "edgewise-vsix-"));
  const vsix = join(folder, "edgewise.vsix");
  execFileSync("npm", ["run", "package", "--", "--out", vsix], { stdio: ["ignore", "inherit", "inherit"] });
  const vsixBytes = readFileSync(vsix);
  size = vsixBytes.length;
  names = entriesOfZip(vsixBytes);
});

afterAll(() => rmSync(folder, { recursive: true }));

/** Files of a folder as the package should name them. */
function filesBelow(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => `extension/${join(parentPath, name).replaceAll("\\", "/")}`);
}

test("the package holds the programs, the views, what they read, and the papers, the rules' pages, the pictures and the sample; nothing else", () => {
  expect([...names].sort()).toEqual(
    [
      "[Content_Types].xml",
      "extension.vsixmanifest",
      "extension/LICENSE.txt",
      "extension/changelog.md",
      "extension/dist/client-library.cjs",
      "extension/dist/edgewise.js",
      "extension/dist/edgewise.schema.json",
      "extension/dist/sample-files.json",
      "extension/dist/extension.cjs",
      "extension/dist/views/matrix.css",
      "extension/dist/views/matrix.js",
      "extension/dist/views/ribbon.css",
      "extension/dist/views/ribbon.js",
      "extension/dist/third-party-notices.txt",
      "extension/dist/tree-sitter-cpp.wasm",
      "extension/dist/web-tree-sitter.wasm",
      "extension/dist/web/extension.cjs",
      "extension/dist/web/server.js",
      ...filesBelow("docs/rules"),
      ...filesBelow("docs/pictures"),
      ...filesBelow("sample-workspace"),
      "extension/package.json",
      "extension/readme.md",
    ].sort(),
  );
});

test("the package is smaller than 8 MB", () => {
  expect(size).toBeGreaterThan(0);
  expect(size).toBeLessThan(8_000_000);
});

test("the list of the sample's files names them all", () => {
  const listed: readonly string[] = JSON.parse(readFileSync("dist/sample-files.json", "utf8"));
  const packaged = names.filter((name) => name.startsWith("extension/sample-workspace/"));
  expect(listed.map((file) => `extension/sample-workspace/${file}`).sort()).toEqual([...packaged].sort());
});
