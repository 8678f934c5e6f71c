import { expect, test } from "vitest";
import { HandedFiles } from "../../../server/files/handed-files.ts";
import { routedFiles } from "../../../server/files/routed-files.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";

const texts = {
  "/memory:a/p/main.c": "main",
  "/memory:a/p/src/deep/x.h": "x",
  "/memory:a/pq/other.c": "other",
};

function filled(): HandedFiles {
  const files = new HandedFiles();
  for (const [path, text] of Object.entries(texts)) files.set(path, text);
  return files;
}

test("folders are listed as those of any other host", () => {
  const files = filled();
  const other = hostOfFiles(texts);
  for (const folder of ["/memory:a", "/memory:a/p", "/memory:a/p/src", "/memory:a/p/src/deep", "/nowhere"]) {
    expect(files.listFolder(folder)).toEqual(other.listFolder(folder));
  }
  expect(files.listFolder("/")).toEqual(["memory:a/"]);
});

test("what is gone is not listed", () => {
  const files = filled();
  files.set("/memory:a/p/src/deep/x.h", undefined);
  expect(files.listFolder("/memory:a/p")).toEqual(["main.c"]);
  files.forget("/memory:a/p");
  expect(files.readText("/memory:a/p/main.c")).toBeUndefined();
  expect(files.readText("/memory:a/pq/other.c")).toBe("other");
});

test("what lies in a folder that stays is not forgotten", () => {
  const files = filled();
  files.forget("/memory:a", ["/memory:a/p/src"]);
  expect(files.readText("/memory:a/p/src/deep/x.h")).toBe("x");
  expect(files.count).toBe(1);
});

test("a project's folders are listed without those beside it", () => {
  expect([...filled().listingsBelow("/memory:a/p")]).toEqual([
    ["/memory:a/p", ["main.c", "src/"]],
    ["/memory:a/p/src/deep", ["x.h"]],
    ["/memory:a/p/src", ["deep/"]],
  ]);
});

test("each path is asked of the host that has it", () => {
  const both = routedFiles(hostOfFiles({ "/p/main.c": "disk" }), filled(), (path) =>
    path.startsWith("/memory:"),
  );
  expect(both.readText("/p/main.c")).toBe("disk");
  expect(both.readText("/memory:a/p/main.c")).toBe("main");
  expect(both.listFolder("/p")).toEqual(["main.c"]);
  expect(both.listFolder("/memory:a/pq")).toEqual(["other.c"]);
});
