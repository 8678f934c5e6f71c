import { expect, test } from "vitest";
import { ToldOnce } from "../../../client/hand-over/told-once.ts";

test("what was told is not told again, and neither is what came with it", () => {
  const told = new ToldOnce();
  expect(told.firstNews([])).toBeUndefined();
  expect(told.firstNews(["a is too large", "b is too large"])).toBe("a is too large");
  expect(told.firstNews(["a is too large", "b is too large"])).toBeUndefined();
  expect(told.firstNews(["a is too large", "c is too large"])).toBe("c is too large");
});
