import { posix } from "node:path";
import { expect, test } from "vitest";
import { below, nameOf, seenFrom } from "../../../server/files/paths.ts";

const folders = ["/", "/a", "/a/b", "/memory:host/a"];
const files = ["/main.c", "/a/main.c", "/a/b/c/main.c", "/ab/main.c", "/memory:host/a/main.c"];

// Node's own functions for POSIX paths say what is right.
test.each(folders.flatMap((folder) => files.map((file) => [folder, file] as const)))(
  "from %s, %s looks as Node says, and is found again",
  (folder, file) => {
    const seen = seenFrom(folder, file);
    expect(seen).toBe(posix.relative(folder, file));
    expect(below(folder, seen)).toBe(file);
    expect(nameOf(file)).toBe(posix.basename(file));
    expect(nameOf(folder)).toBe(posix.basename(folder));
  },
);

test("a drive's files are found again", () => {
  expect(seenFrom("c:/a", "c:/a/b/main.c")).toBe("b/main.c");
  expect(below("c:/a", "../lib/x.h")).toBe("c:/lib/x.h");
});
