import { expect, test } from "vitest";
import { wishesOf } from "../../../../server/command-line/matrix/wishes.ts";

const wishes = (options: Readonly<Record<string, string>>) =>
  wishesOf({ operands: [], options: new Map(Object.entries(options)) });

test("what is not given", () => {
  expect(wishes({})).toEqual({
    paths: ["."],
    choice: { strokes: undefined, mice: undefined, pcs: undefined },
    shard: undefined,
    seed: 1,
    workers: undefined,
    format: "text",
    output: undefined,
  });
});

test("lists, a shard and numbers", () => {
  expect(wishes({ mice: "plain, wheel", shard: "3/3", seed: "0", workers: "8" })).toMatchObject({
    choice: { mice: ["plain", "wheel"] },
    shard: { part: 3, parts: 3 },
    seed: 0,
    workers: 8,
  });
});

test.each(["0/4", "5/4", "1", "1/0", "-1/4", "a/b", "1/4/2", "1.5/2"])("no shard: %s", (shard) => {
  expect(() => wishes({ shard })).toThrow(
    `--shard needs a part and how many there are, such as 1/4 up to 4/4, not "${shard}"`,
  );
});

test.each([
  [{ workers: "0" }, '--workers needs a whole number from 1 to 999, not "0"'],
  [{ seed: "x" }, '--seed needs a whole number from 0, not "x"'],
  [{ format: "jnuit" }, '--format cannot be "jnuit"; did you mean junit?'],
])("nothing that can be done: %j", (options, message) => {
  expect(() => wishes(options)).toThrow(message);
});
