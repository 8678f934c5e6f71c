import { expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { LineIndex } from "../../../src-core/present/line-index.ts";

// The reference is the text document of the Language Server Protocol's own library; it counts from 0.
const texts = [
  "",
  "\n",
  "one",
  "one\ntwo\n",
  "one\r\ntwo\rthree\n\nfive",
  "\r\r\n\n\r",
  "tab\there\n\u{1F5B1} mouse\nend",
];

test.each(texts.map((text) => [JSON.stringify(text), text]))(
  "places in %s are those of the protocol",
  (_, text) => {
    const index = new LineIndex(text);
    const document = TextDocument.create("file:///a.c", "c", 0, text);
    for (let offset = 0; offset <= text.length; offset++) {
      // Inside a CR LF pair the reference moves to the CR; no span of a token ever starts there.
      if (text[offset - 1] === "\r" && text[offset] === "\n") continue;
      const { line, character } = document.positionAt(offset);
      expect(index.placeOf(offset), `offset ${offset}`).toEqual({ line: line + 1, column: character + 1 });
    }
  },
);

test("offsets outside the text count as its nearer end", () => {
  const index = new LineIndex("ab\ncd");
  expect(index.placeOf(-4)).toEqual({ line: 1, column: 1 });
  expect(index.placeOf(99)).toEqual({ line: 2, column: 3 });
});

test("a line's text has no line end, and a line that is not there has no text", () => {
  const index = new LineIndex("a\r\nb\rc\n");
  expect([1, 2, 3, 4, 5].map((line) => index.lineText(line))).toEqual(["a", "b", "c", "", ""]);
});
