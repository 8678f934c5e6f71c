import { expect, test } from "vitest";
import { noCheckerInWords } from "../../client/no-checker.ts";

test("what helps is the setting where that is off, whatever happened before; else the command; else to wait", () => {
  for (const gaveUp of [true, false]) expect(noCheckerInWords(false, gaveUp)).toContain("edgewise.enable");
  expect(noCheckerInWords(true, true)).toContain("Edgewise: Restart the Checker");
  expect(noCheckerInWords(true, false)).toContain("starting again");
});
