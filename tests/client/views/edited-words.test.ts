import { expect, test } from "vitest";
import { editedInWords } from "../../../client/views/edited-words.ts";

test.each([
  [[], ""],
  [["ps2.c"], "ps2.c was edited since."],
  [["ps2.c", "main.c"], "ps2.c and main.c were edited since."],
  [["ps2.c", "main.c", "board.h"], "ps2.c and 2 other files were edited since."],
] as const)("%j", (files, words) => expect(editedInWords(files)).toBe(words));
