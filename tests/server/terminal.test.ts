import { expect, test } from "vitest";
import { wantsColours } from "../../server/terminal.ts";

const terminal = { isTTY: true };

// no-color.org: any value but the empty one declines colours.
test.each([
  ["a terminal", terminal, {}, true],
  ["a pipe or file", {}, {}, false],
  ["a user who declines", terminal, { NO_COLOR: "1" }, false],
  ["an empty NO_COLOR", terminal, { NO_COLOR: "" }, true],
  ["a terminal that cannot", terminal, { TERM: "dumb" }, false],
])("%s", (_, stream, environment, colours) => {
  expect(wantsColours(stream, environment)).toBe(colours);
});
