import { describe, expect, test } from "vitest";
import { isMovementSubject, isRunParams, isRunSubject } from "../../client/command-arguments.ts";

const shown = { mouse: "plain", pc: "patient", stroke: "nudge" };
const encoder = {
  project: "/ferry",
  layout: "two-button",
  subject: { file: "/ferry/main.c", name: "encode" },
};

describe("what a command is called with", () => {
  test("is taken where it is what lenses and cells hand over", () => {
    expect(isRunParams({ project: "/ferry", ...shown })).toBe(true);
    expect([{ project: "/ferry" }, { project: "/ferry", shown }].map(isRunSubject)).toEqual([true, true]);
    expect([encoder, { ...encoder, given: "up 1" }].map(isMovementSubject)).toEqual([true, true]);
  });

  test("is not where a key hands over nothing, or something else", () => {
    for (const isRight of [isRunParams, isRunSubject, isMovementSubject])
      for (const value of [undefined, null, "project", {}, { project: 3 }])
        expect(isRight(value)).toBe(false);
    expect(isRunParams({ project: "/ferry" })).toBe(false);
    expect(isRunSubject({ project: "/ferry", shown: { mouse: "plain" } })).toBe(false);
    expect(isMovementSubject({ ...encoder, subject: "encode" })).toBe(false);
    expect(isMovementSubject({ ...encoder, given: 1 })).toBe(false);
  });
});
