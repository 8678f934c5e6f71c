import { expect, test } from "vitest";
import { editedSince, lineSince } from "../../../../server/language-server/runs/edited-since.ts";

const before = ["#include <avr/io.h>", "", "void hold(void) {", "  wait(52);", "}", "", "void go(void) {}"];

/** Where the line with this text stands after `change`; undefined where it is not there as it was. */
function lineOf(text: string, change: (lines: string[]) => void): number | undefined {
  const now = [...before];
  change(now);
  const since = lineSince(before.join("\n"), now.join("\r\n"), before.indexOf(text) + 1);
  return since.isAsItWas ? since.line : undefined;
}

test("files that changed, came or went are told, and none where an edit was taken back", () => {
  const made = new Map([
    ["/a.c", "1"],
    ["/b.c", "2"],
  ]);
  expect(
    editedSince(
      made,
      new Map([
        ["/a.c", "one"],
        ["/c.c", "3"],
      ]),
    ),
  ).toEqual(["/a.c", "/b.c", "/c.c"]);
  expect(editedSince(made, new Map(made))).toEqual([]);
});

test("a line above an edit stays, one below it moves along", () => {
  const edit = (lines: string[]) => lines.splice(3, 1, "  // At least 100 us.", "  wait(120);");
  expect(lineOf("void hold(void) {", edit)).toBe(3);
  expect(lineOf("void go(void) {}", edit)).toBe(8);
});

test("a line between two edits is found again, unless another is like it", () => {
  const edit = (lines: string[]) => {
    lines.unshift("// Ferry");
    lines.push("", "int main(void) {", "}");
  };
  expect(lineOf("  wait(52);", edit)).toBe(5);
  // There are two of these then.
  expect(lineOf("}", edit)).toBeUndefined();
});

test("a line that was edited is not there any more; where it stood is told", () => {
  const edited = before.map((line) => line.replace("52", "120"));
  expect(lineSince(before.join("\n"), edited.join("\n"), 4)).toEqual({ line: 4, isAsItWas: false });
  expect(lineSince(before.join("\n"), "", 4)).toEqual({ line: 1, isAsItWas: false });
});
