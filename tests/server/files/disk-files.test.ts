import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { DiskFiles } from "../../../server/files/disk-files.ts";

let folder = "";

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "edgewise-files-"));
  writeFileSync(join(folder, "main.c"), "int x;\n");
  mkdirSync(join(folder, "lib.c"));
  symlinkSync(join(folder, "gone"), join(folder, "dangling.c"));
  symlinkSync(join(folder, "lib.c"), join(folder, "linked"));
});

afterAll(() => rmSync(folder, { recursive: true }));

test("files are read and folders listed, folders marked by a slash", () => {
  const files = new DiskFiles(folder);
  expect(files.readText("main.c")).toBe("int x;\n");
  expect(files.listFolder(".")).toEqual(["dangling.c", "lib.c/", "linked/", "main.c"]);
  expect(files.unreadable).toEqual([]);
});

test("whether a name is found in other case is known beforehand", () => {
  const files = new DiskFiles(folder);
  expect(files.ignoresCase).toBe(files.readText("MAIN.C") !== undefined);
});

test("what is not there is not at fault", () => {
  const files = new DiskFiles(folder);
  expect(files.readText("other.h")).toBeUndefined();
  expect(files.readText("main.c/other.h")).toBeUndefined();
  expect(files.readText("lib.c")).toBeUndefined();
  expect(files.listFolder("nowhere")).toEqual([]);
  expect(files.unreadable).toEqual([]);
});

test("what is there and cannot be read is told once", () => {
  const files = new DiskFiles(folder);
  files.readText("dangling.c");
  files.readText("dangling.c");
  expect(files.unreadable).toEqual([{ path: "dangling.c", reason: "it is a link to nothing" }]);
});
