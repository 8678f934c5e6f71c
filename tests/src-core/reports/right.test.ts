import { describe, expect, it } from "vitest";
import { trialRules } from "../../../src-core/checks/registry.ts";
import { findingsIn } from "../checks/harness.ts";
import { rightDecoders } from "./right-decoders.ts";
import { rightEncoders as fiveByte } from "./right-encoders/five-byte.ts";
import { rightEncoders as middleButton } from "./right-encoders/middle-button.ts";
import { rightEncoders as ps2FiveButton } from "./right-encoders/ps2-five-button.ts";
import { rightEncoders as ps2Standard } from "./right-encoders/ps2-standard.ts";
import { rightEncoders as ps2Wheel } from "./right-encoders/ps2-wheel.ts";
import { rightEncoders as twoButton } from "./right-encoders/two-button.ts";
import { rightEncoders as wheel } from "./right-encoders/wheel.ts";

// What the encoders and decoders make is compared with the tables of the layouts' documents in tests/oracle/reports.

const right = {
  "two-button": twoButton,
  "middle-button": middleButton,
  wheel,
  "five-byte": fiveByte,
  "ps2-standard": ps2Standard,
  "ps2-wheel": ps2Wheel,
  "ps2-five-button": ps2FiveButton,
  decoders: rightDecoders,
};

describe.each(Object.entries(right))("nothing is found in a right function: %s", (_, examples) => {
  it.each(Object.entries(examples))("%s", (_, example) => {
    expect(findingsIn(example, trialRules)).toEqual([]);
  });

  it("of which there are enough", () => {
    expect(Object.keys(examples).length).toBeGreaterThanOrEqual(8);
  });
});
