import { readFileSync } from "node:fs";
import { expect, test } from "vitest";

/** Names of modules that a bundle asks for when it runs. */
function askedFor(bundle: string, part = (text: string) => text): readonly string[] {
  const text = part(readFileSync(`dist/web/${bundle}`, "utf8"));
  const asks = /\b(?:require|import)\(\s*["'`]([\w@./:-]+)["'`]\s*\)/g;
  return [...new Set([...text.matchAll(asks)].map(([, name]) => name ?? ""))].sort();
}

test("the extension's bundle for browsers asks for the editor alone", () => {
  expect(askedFor("extension.cjs")).toEqual(["vscode"]);
});

test("the bundle for web workers asks for nothing, but where the grammar's runtime has found itself in Node", () => {
  const inNode = /if\(ENVIRONMENT_IS_NODE\)\{.*?\}else if\(ENVIRONMENT_IS_WEB/gs;
  expect(askedFor("server.js", (text) => text.replace(inNode, ""))).toEqual([]);
});
