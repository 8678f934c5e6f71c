import { describe, expect, test } from "vitest";
import { type Edit, runEdited } from "./edited-samples.ts";

/** Half of each movement goes to the PC; an odd count is kept for the next one. */
const halved: Edit = [
  "main.c",
  "            report_add(&movement);",
  `            static int16_t rest_x, rest_y;
            movement.dx += rest_x;
            movement.dy += rest_y;
            rest_x = movement.dx % 2;
            rest_y = movement.dy % 2;
            movement.dx /= 2;
            movement.dy /= 2;
            report_add(&movement);`,
];
const declared = (scale: string): Edit => ["main.c", "int main", `// @wire serial scale=${scale}\nint main`];
const inSettings: Edit = ["edgewise.json", '"baud": 1200', '"baud": 1200, "scale": "1/2"'];

describe("a firmware that halves every movement", () => {
  const rules = (...edits: readonly Edit[]) =>
    runEdited("ferry-c", [halved, ...edits]).map(({ rule }) => rule);

  test("is right where it says so in a note or in edgewise.json", () => {
    expect(rules(declared("1/2"))).toEqual([]);
    expect(rules(inSettings)).toEqual([]);
  });

  test("loses counts where it says nothing, or something else", () => {
    expect(rules()).toEqual(["report/counts-lost"]);
    expect(rules(declared("1/3"))).toEqual(["report/counts-lost"]);
  });
});
