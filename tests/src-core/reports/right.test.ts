import { describe, expect, it } from "vitest";
import { rules } from "../../../src-core/checks/registry.ts";
import { findingsIn } from "../checks/harness.ts";
import { rightEncoders } from "./corpus.ts";
import { rightDecoders } from "./right-decoders.ts";

const ofTrials = rules.filter((rule) => rule.judgeParts !== undefined);
const right = [...Object.entries(rightEncoders), ["decoders", rightDecoders] as const];

describe.each(right)("nothing is found in a right function: %s", (_, examples) => {
  it.each(Object.entries(examples))("%s", (_, example) => {
    expect(findingsIn(example, ofTrials)).toEqual([]);
  });

  it("of which there are enough", () => {
    expect(Object.keys(examples).length).toBeGreaterThanOrEqual(8);
  });
});
