import { expect, test } from "vitest";
import { edgewise } from "./run-edgewise.ts";

test("a term is explained, whether it is one word or more", () => {
  const { status, stdout, stderr } = edgewise(".", "explain", "set", "sample", "rate");
  expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
  expect(stdout).toContain("0xF3: set sample rate  (command to the mouse)");
  expect(stdout).toContain("10, 20, 40, 60, 80, 100 or 200");
});

test("one that there is not, or none at all, is answered in one line", () => {
  const unknown = edgewise(".", "explain", "two-buton");
  expect(unknown).toEqual({
    status: 2,
    stdout: "",
    stderr: 'edgewise: nothing is called "two-buton"; did you mean "two-button"?\n',
  });
  const none = edgewise(".", "explain");
  expect(none.status).toBe(2);
  expect(none.stderr).toMatch(/^edgewise: explain needs a term.*\n$/);
});
