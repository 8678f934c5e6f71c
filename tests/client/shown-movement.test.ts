import { expect, test } from "vitest";
import { shownMovement } from "../../client/shown-movement.ts";

const offered = ["flick, where it is fastest: right 1", "right 1", "dash, where it is fastest: right 31"].map(
  (given) => ({ given, movement: { right: 1, down: 0, wheel: 0, press: [] } }),
);
const shown = (given: string | undefined) => shownMovement(offered, given)?.given;

test("the movement that is shown is the one of that name, else the stroke that comes to it", () => {
  expect(shown("right 1")).toBe("right 1");
  expect(shown("right 31")).toBe("dash, where it is fastest: right 31");
  expect(shown("up 1")).toBeUndefined();
  expect(shown(undefined)).toBeUndefined();
});
