import { expect, test } from "vitest";
import { FileChangeType, type FileEvent } from "vscode-languageserver";
import { HandedFiles } from "../../../server/files/handed-files.ts";
import { type FileClient, HandedFolders } from "../../../server/language-server/handed-folders.ts";
import { fileLimits } from "../../../server/language-server/wanted-files.ts";

const handed = (uri: string, text: string) => ({ uri, base64: Buffer.from(text).toString("base64") });

/** Folders of a client that has one file in each, and any file that it is asked for later. */
function foldersOf(client: Partial<FileClient> = {}) {
  const files = new HandedFiles();
  const asked: string[] = [];
  const log: string[] = [];
  let changes = 0;
  const folders = new HandedFolders(
    files,
    {
      async readFolder({ folder }) {
        asked.push(folder);
        return { files: [handed(`${folder}/main.c`, `of ${folder}`)], leftOut: [] };
      },
      async readFiles({ files: uris }) {
        asked.push(...uris);
        return uris.map((uri) => handed(uri, "new"));
      },
      ...client,
    },
    { changed: () => changes++, log: (message) => log.push(message) },
  );
  return { folders, files, asked, log, changes: () => changes };
}

test("a folder is asked for once, and forgotten when it is gone", async () => {
  const { folders, files, asked, changes } = foldersOf();
  await folders.follow(["/memory:a/p", "/memory:a/q"]);
  await folders.follow(["/memory:a/p", "/memory:a/q"]);
  expect(asked).toEqual(["memory://a/p", "memory://a/q"]);
  expect(files.readText("/memory:a/q/main.c")).toBe("of memory://a/q");
  await folders.follow(["/memory:a/p"]);
  expect(files.readText("/memory:a/q/main.c")).toBeUndefined();
  expect(files.readText("/memory:a/p/main.c")).toBe("of memory://a/p");
  expect(changes()).toBe(3);
});

test("of folders within one another, what is left keeps its files and is listed whole", async () => {
  const { folders, files, asked } = foldersOf();
  const [outer, inner] = ["/memory:a/p", "/memory:a/p/in"];
  const sources = () => [outer, inner].map((folder) => files.readText(`${folder}/main.c`));
  const both = ["of memory://a/p", "of memory://a/p/in"];
  await folders.follow([inner, outer]);
  expect(sources()).toEqual(both);
  expect([...folders.listingsFor(`${inner}/deep`).keys()].sort()).toEqual([outer, inner]);
  await folders.follow([outer]);
  expect(sources()).toEqual(both);
  await folders.follow([outer, inner]);
  await folders.follow([inner]);
  expect(sources()).toEqual([undefined, "of memory://a/p/in"]);
  expect(asked).toHaveLength(3);
});

test("a folder that is deleted takes what is below it along, the open one as well", async () => {
  const { folders, files } = foldersOf();
  await folders.follow(["/memory:a/p", "/memory:a/q"]);
  files.set("/memory:a/p/lib/x.h", "x");
  files.set("/memory:a/p/lib.c", "c");
  const deleted = (uri: string) => folders.changed([{ uri, type: FileChangeType.Deleted }]);
  await deleted("memory://a/p/lib");
  expect(files.readText("/memory:a/p/lib/x.h")).toBeUndefined();
  expect(files.readText("/memory:a/p/lib.c")).toBe("c");
  await deleted("memory://a/q");
  expect(files.readText("/memory:a/q/main.c")).toBeUndefined();
});

test("a folder that could not be had is asked for again", async () => {
  let isAway = true;
  const { folders, files } = foldersOf({
    async readFolder({ folder }) {
      if (isAway) throw new Error("not yet");
      return { files: [handed(`${folder}/main.c`, "here")], leftOut: [] };
    },
  });
  await folders.follow(["/memory:a/p"]);
  isAway = false;
  await folders.follow(["/memory:a/p"]);
  expect(files.readText("/memory:a/p/main.c")).toBe("here");
});

test("changes outside of its folders are not asked for", async () => {
  const { folders, files, asked } = foldersOf();
  await folders.follow(["/memory:a/p"]);
  const uris = ["memory://a/p/x.h", "memory://a/pq/x.h", "file:///x.h"];
  await folders.changed(uris.map((uri) => ({ uri, type: FileChangeType.Created })));
  expect(asked.slice(1)).toEqual(["memory://a/p/x.h"]);
  expect(files.readText("/memory:a/p/x.h")).toBe("new");
});

test("no more files come than the limit, which is told once", async () => {
  const { folders, files, log } = foldersOf();
  await folders.follow(["/memory:a/p"]);
  for (let count = files.count; count < fileLimits.files; count++) files.set(`/memory:a/p/${count}.c`, "");
  const created = ["x.c", "y.c"].map(
    (name): FileEvent => ({ uri: `memory://a/p/${name}`, type: FileChangeType.Created }),
  );
  await folders.changed(created);
  await folders.changed(created);
  expect(files.count).toBe(fileLimits.files);
  expect(log).toHaveLength(1);
  await folders.changed([{ uri: "memory://a/p/main.c", type: FileChangeType.Changed }]);
  expect(files.readText("/memory:a/p/main.c")).toBe("new");
});

test("what the client left out goes to the log, and so does a client that fails", async () => {
  const { folders, log, files } = foldersOf({
    async readFolder({ folder }) {
      if (folder.endsWith("/q")) throw new Error("no such provider");
      return { files: [], leftOut: [`${folder} has more than it should`] };
    },
    readFiles: () => Promise.reject(new Error("gone")),
  });
  await folders.follow(["/memory:a/p", "/memory:a/q"]);
  await folders.changed([{ uri: "memory://a/p/x.h", type: FileChangeType.Created }]);
  expect(log).toEqual([
    "memory://a/p has more than it should",
    expect.stringContaining("memory://a/q could not be had: Error: no such provider"),
    expect.stringContaining("could not be had: Error: gone"),
  ]);
  expect(files.count).toBe(0);
});
