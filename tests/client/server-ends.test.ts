import { expect, test } from "vitest";
import { ServerEnds } from "../../client/server-ends.ts";

const minute = 60_000;

test("the fifth end within three minutes is one too many", () => {
  const ends = new ServerEnds();
  expect([0, 1, 2, 3, 4].map((end) => ends.happened(end * 1000))).toEqual([true, true, true, true, false]);
  expect(ends.count).toBe(5);
});

test("ends that are long ago do not count", () => {
  const ends = new ServerEnds();
  for (let end = 0; end < 20; end++) expect(ends.happened(end * minute)).toBe(true);
  expect(ends.count).toBe(3);
});

test("whoever starts it anew has all tries again", () => {
  const ends = new ServerEnds();
  for (let end = 0; end < 5; end++) ends.happened(end);
  ends.forget();
  expect(ends.happened(6)).toBe(true);
});
