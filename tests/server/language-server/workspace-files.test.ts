import { expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { WorkspaceFiles } from "../../../server/language-server/workspace-files.ts";

/** A disk that counts how often it is asked. */
function countedDisk(texts: Record<string, string>) {
  const reads: string[] = [];
  return {
    reads,
    texts,
    readText(path: string) {
      reads.push(path);
      return this.texts[path];
    },
    listFolder: () => Object.keys(texts),
  };
}

test("an unsaved buffer stands before the disk until it is closed", () => {
  const files = new WorkspaceFiles(countedDisk({ "/a.c": "disk" }));
  files.openBuffer("/a.c", TextDocument.create("file:///a.c", "c", 1, "buffer"));
  expect(files.readText("/a.c")).toBe("buffer");
  files.closeBuffer("/a.c");
  expect(files.readText("/a.c")).toBe("disk");
});

test("the disk is asked once until it changes", () => {
  const disk = countedDisk({ "/a.c": "old" });
  const files = new WorkspaceFiles(disk);
  files.readText("/a.c");
  files.readText("/a.c");
  expect(disk.reads).toEqual(["/a.c"]);
  disk.texts["/a.c"] = "new";
  files.forget("/a.c");
  expect(files.readText("/a.c")).toBe("new");
});

test("a folder that went takes what it had along, and nothing beside it", () => {
  const disk = countedDisk({ "/lib/h.h": "in it", "/library.h": "beside it" });
  const files = new WorkspaceFiles(disk);
  for (const path of ["/lib/h.h", "/library.h"]) files.readText(path);
  disk.texts = {};
  files.forget("/lib");
  expect([files.readText("/lib/h.h"), files.readText("/library.h")]).toEqual([undefined, "beside it"]);
});

test("a file that was not there is asked for again after a change", () => {
  const disk = countedDisk({});
  const files = new WorkspaceFiles(disk);
  expect(files.readText("/h.h")).toBeUndefined();
  disk.texts["/h.h"] = "now";
  files.forget("/h.h");
  expect(files.readText("/h.h")).toBe("now");
});
