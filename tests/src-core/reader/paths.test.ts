import { expect, test } from "vitest";
import { folderOf, joinPath, tidyPath } from "../../../src-core/reader/paths.ts";

test.each([
  [".", "main.c", "main.c"],
  ["", "./lib//ring.h", "lib/ring.h"],
  ["ferry/src", "../ring.h", "ferry/ring.h"],
  ["ferry", "../../ring.h", "../ring.h"],
  ["ferry", "..", "."],
  ["..", "../ring.h", "../../ring.h"],
  ["ferry", "/lib/../ring.h", "/ring.h"],
  ["/", "main.c", "/main.c"],
  ["/ferry", "../../ring.h", "/ring.h"],
  ["C:/", "main.c", "C:/main.c"],
  ["C:/ferry", "../ring.h", "C:/ring.h"],
  ["C:/ferry", "../../ring.h", "C:/ring.h"],
  ["C:/ferry", "D:/lib/ring.h", "D:/lib/ring.h"],
  ["//harbour/share", "ring.h", "//harbour/share/ring.h"],
  ["//harbour/share/ferry", "../ring.h", "//harbour/share/ring.h"],
  ["ferry", "//harbour/share/ring.h", "//harbour/share/ring.h"],
])("in %j, %j is %j", (folder, name, path) => {
  expect(joinPath(folder, name)).toBe(path);
});

test.each([
  ["ferry/main.c", "ferry"],
  ["main.c", "."],
  ["/main.c", "/"],
  ["C:/main.c", "C:/"],
  ["//harbour/share/main.c", "//harbour/share"],
  ["//harbour/share", "//harbour/"],
  ["..", undefined],
  [".", undefined],
  ["/", undefined],
  ["C:/", undefined],
  ["//harbour/", undefined],
])("%j lies in %j", (path, folder) => {
  expect(folderOf(path)).toBe(folder);
});

test.each([
  ["./ferry/", "ferry"],
  ["./", "."],
  ["///", "/"],
  ["C:/", "C:/"],
  ["C:/ferry/", "C:/ferry"],
])("%j is %j", (path, tidy) => {
  expect(tidyPath(path)).toBe(tidy);
});
