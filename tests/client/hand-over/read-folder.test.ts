import { expect, test } from "vitest";
import { readFiles, readFolder } from "../../../client/hand-over/read-folder.ts";
import { MemoryFiles } from "../../server/built/language-server/memory-files.ts";

const root = "memory:/firmware";
const limits = { folders: 10, depth: 3, files: 4, bytes: 1_000, bytesOfFile: 100 };
const wanted = { extensions: ["c", "h"], names: ["edgewise.json"], leftOutFolders: ["build"], limits };

/** Names that were handed over, and what was said to be left out. */
async function readOf(files: Readonly<Record<string, string>>, others: Partial<typeof limits> = {}) {
  const memory = new MemoryFiles(root, files);
  const params = { ...wanted, limits: { ...limits, ...others } };
  const { files: handed, leftOut } = await readFolder(memory, root, params);
  return { names: handed.map(({ uri }) => uri.slice(root.length + 1)), leftOut, reads: memory.reads };
}

test("files of the kinds that were asked for, whatever the case of their names", async () => {
  const { names, leftOut, reads } = await readOf({
    "MAIN.C": "",
    "edgewise.json": "",
    "notes.txt": "",
    c: "",
    "src/x.h": "",
    "Build/made.c": "",
    ".git/hooks.c": "",
  });
  expect(names).toEqual(["MAIN.C", "edgewise.json", "src/x.h"]);
  expect(reads).toHaveLength(3);
  expect(leftOut).toEqual([]);
});

test("their bytes arrive as they are", async () => {
  const bytes = Uint8Array.from({ length: 100_000 }, (_, index) => (index * 7) % 256);
  const files = new MemoryFiles(root, {});
  files.size = async () => bytes.length;
  files.read = async () => bytes;
  const [file] = await readFiles(files, ["memory:/firmware/a.c"], { bytesOfFile: bytes.length });
  expect(Buffer.from(file?.base64 ?? "", "base64").equals(bytes)).toBe(true);
});

test("no more files than the limit are read, the nearest first, and that is said once", async () => {
  const names = ["deep/er/6.c", "deep/5.c", "1.c", "2.c", "3.c", "4.c"];
  const { names: handed, leftOut, reads } = await readOf(Object.fromEntries(names.map((name) => [name, ""])));
  expect(handed).toEqual(["1.c", "2.c", "3.c", "4.c"]);
  expect(reads).toHaveLength(4);
  expect(leftOut).toEqual([`${root} has more than 4 sources; the deepest are not read`]);
});

test("no more bytes than the limit are handed over", async () => {
  const files = { "1.c": "x".repeat(60), "2.c": "x".repeat(60), "3.c": "x" };
  const { names, leftOut } = await readOf(files, { bytes: 100 });
  expect(names).toEqual(["1.c"]);
  expect(leftOut).toEqual([`the sources of ${root} have more than 100 bytes; the deepest are not read`]);
});

test("a large file is left out, and is not even read", async () => {
  const { names, leftOut, reads } = await readOf({ "1.c": "x".repeat(101), "2.c": "x".repeat(100) });
  expect(names).toEqual(["2.c"]);
  expect(reads).toEqual([`${root}/2.c`]);
  expect(leftOut).toEqual([`${root}/1.c is larger than 100 bytes and is not read`]);
});

test("a folder without end is left at the limits of depth and of folders", async () => {
  const deep = await readOf({ "1/2/3/in.c": "", "1/2/3/4/out.c": "" });
  expect(deep.names).toEqual(["1/2/3/in.c"]);
  expect(deep.leftOut).toHaveLength(1);
  const many = Object.fromEntries(Array.from({ length: 20 }, (_, index) => [`${index}/x.c`, ""]));
  const wide = await readOf(many, { files: 100 });
  expect(wide.names).toHaveLength(limits.folders - 1);
  expect(wide.leftOut).toHaveLength(1);
});

test("a folder that cannot be listed is told, and those beside it are read", async () => {
  const files = new MemoryFiles(root, { "1.c": "", "shut/2.c": "", "open/3.c": "" });
  const list = files.list.bind(files);
  files.list = (folder) =>
    folder.endsWith("/shut") ? Promise.reject(new Error("permission denied")) : list(folder);
  const { files: handed, leftOut } = await readFolder(files, root, wanted);
  expect(handed.map(({ uri }) => uri)).toEqual([`${root}/1.c`, `${root}/open/3.c`]);
  expect(leftOut).toEqual([`${root}/shut cannot be listed: permission denied`]);
});

test("where the folder itself cannot be listed, there is nothing to hand over", async () => {
  const files = new MemoryFiles(root, {});
  files.list = () => Promise.reject(new Error("no connection"));
  await expect(readFolder(files, root, wanted)).rejects.toThrow(`${root} cannot be listed: no connection`);
});

test("a file that is gone or too large is handed over as gone", async () => {
  const files = new MemoryFiles(root, { "1.c": "x".repeat(101) });
  const uris = [`${root}/1.c`, `${root}/2.c`];
  const handed = await readFiles(files, uris, { bytesOfFile: 100 });
  expect(handed).toEqual(uris.map((uri) => ({ uri, base64: undefined })));
});
