import { expect, test } from "vitest";
import { KeptPages } from "../../client/kept-pages.ts";

test("of more pages than are kept, the one that was shown longest ago goes", () => {
  const pages = new KeptPages(2);
  pages.keep("/F4", "enable");
  pages.keep("/F5", "disable");
  pages.keep("/F4", "enable reporting");
  pages.keep("/FF", "reset");
  expect(["/F4", "/F5", "/FF"].map((address) => pages.at(address))).toEqual([
    "enable reporting",
    undefined,
    "reset",
  ]);
});
