import { expect, test } from "vitest";
import { pathOfUri, uriOfPath } from "../../../server/language-server/uri-paths.ts";

// RFC 8089 (the "file" URI scheme) and RFC 3986, 2.1 (percent-encoding).
test.each([
  ["file:///home/a/main.c", "/home/a/main.c"],
  ["file:///home/a%20b/m%C3%BCll.c", "/home/a b/m\u00fcll.c"],
  ["file:///home/100%25.c", "/home/100%.c"],
])("%s is the path %s", (uri, path) => {
  expect(pathOfUri(uri)).toBe(path);
  expect(pathOfUri(uriOfPath(path))).toBe(path);
});

test.each(["untitled:Untitled-1", "git:/home/a/main.c?ref", "not a uri", "", "file:///a%2Fb.c"])(
  "%j has no path",
  (uri) => {
    expect(pathOfUri(uri)).toBeUndefined();
  },
);
