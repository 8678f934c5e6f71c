import { expect, test } from "vitest";
import { jumpInWords } from "../../client/jump-words.ts";

const place = { file: "ps2.c", line: 26, column: 5 };

test("a line that is what and where it was needs no word", () => {
  expect(jumpInWords(place, { kind: "place", place, isAsItWas: true })).toBeUndefined();
});

test("a line that moved or was edited is said to be so, and one that nobody can tell of", () => {
  expect(jumpInWords(place, { kind: "place", place: { ...place, line: 28 }, isAsItWas: true })).toBe(
    "ps2.c was edited since the run: its line 26 is line 28 now.",
  );
  expect(jumpInWords(place, { kind: "place", place, isAsItWas: false })).toContain("not there any more");
  expect(jumpInWords(place, undefined)).toContain("may have been edited");
});
