import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { isForeign, pathOfUri, uriOfPath } from "../../../server/language-server/uri-paths.ts";

// RFC 8089 (the "file" URI scheme) and RFC 3986, 2.1 (percent-encoding) and 3 (the parts of a URI).
test.each([
  ["file:///home/a/main.c", "/home/a/main.c"],
  ["file:///home/a%20b/m%C3%BCll.c", "/home/a b/m\u00fcll.c"],
  ["file:///home/100%25.c", "/home/100%.c"],
  ["file:///c%3A/a/main.c", "c:/a/main.c"],
  ["file:///C:/a/main.c", "C:/a/main.c"],
  ["file://share/a/main.c", "//share/a/main.c"],
  ["file://sub%24/system/main.c", "//sub$/system/main.c"],
  ["file:///%5B1%5D.c", "/[1].c"],
  ["memory:/home/a%20b/main.c", "/memory:/home/a b/main.c"],
  ["vscode-vfs://host%2Bone/owner/main.c", "/vscode-vfs:host%2Bone/owner/main.c"],
  ["memory:/", "/memory:"],
  ["memory://mount/", "/memory:mount"],
])("%s is the path %s", (uri, path) => {
  expect(pathOfUri(uri)).toBe(path);
  expect(pathOfUri(uriOfPath(path))).toBe(path);
});

test("the server of a share is encoded as an editor does", () => {
  expect(uriOfPath("//sub$/system/main.c")).toBe("file://sub%24/system/main.c");
});

test("a folder of another scheme is one path, with a slash at its end or without", () => {
  expect(pathOfUri("memory://mount/firmware/")).toBe("/memory:mount/firmware");
});

test.each([
  "untitled:Untitled-1",
  "git:/home/a/main.c?ref",
  "not a uri",
  "",
  "file:///a%2Fb.c",
  "file:///a%ff",
  "file://a%2Fb/main.c",
  "file://a%ff/main.c",
])("%j has no path", (uri) => {
  expect(pathOfUri(uri)).toBeUndefined();
});

// The function of Node that makes such a URI.
test.each(["/home/a b/m\u00fcll.c", "/100%.c", "/what?/#1.c", "/back\\slash.c", "/tab\t.c", "/'a'.c"])(
  "%j has the URI that Node gives it",
  (path) => {
    expect(uriOfPath(path)).toBe(pathToFileURL(path).href);
  },
);

test("a path of another scheme is told from one of the disk", () => {
  expect(isForeign("/memory:host/main.c")).toBe(true);
  expect(["/home/main.c", "c:/home/main.c", "/c:/home/main.c", "//share/main.c"].filter(isForeign)).toEqual(
    [],
  );
});
