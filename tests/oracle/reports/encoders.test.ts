import { describe, expect, test } from "vitest";
import type { Example } from "../../../src-core/checks/rule.ts";
import { rightDecoders } from "../../src-core/reports/right-decoders.ts";
import * as fiveByte from "../../src-core/reports/right-encoders/five-byte.ts";
import * as middleButton from "../../src-core/reports/right-encoders/middle-button.ts";
import * as ps2FiveButton from "../../src-core/reports/right-encoders/ps2-five-button.ts";
import * as ps2Standard from "../../src-core/reports/right-encoders/ps2-standard.ts";
import * as ps2Wheel from "../../src-core/reports/right-encoders/ps2-wheel.ts";
import * as twoButton from "../../src-core/reports/right-encoders/two-button.ts";
import * as wheel from "../../src-core/reports/right-encoders/wheel.ts";
import { departuresOf } from "./departures.ts";

/*
 * The encoders and decoders that rules and analysis are tested with are right: compiled by avr-gcc and run on a
 * simulated chip, they do what the tables in `bit-tables.ts` say, which are typed from the documents.
 */
const encoders: Readonly<Record<string, Readonly<Record<string, Example>>>> = {
  "two-button": twoButton.rightEncoders,
  "middle-button": middleButton.rightEncoders,
  wheel: wheel.rightEncoders,
  "five-byte": fiveByte.rightEncoders,
  "ps2-standard": ps2Standard.rightEncoders,
  "ps2-wheel": ps2Wheel.rightEncoders,
  "ps2-five-button": ps2FiveButton.rightEncoders,
};

describe.each(Object.entries(encoders))("encoders of %s", (_, examples) => {
  test.each(Object.entries(examples))("%s", async (_, example) => {
    expect((await departuresOf(example)).slice(0, 5)).toEqual([]);
  });
});

describe("decoders", () => {
  test.each(Object.entries(rightDecoders))("%s", async (_, example) => {
    expect((await departuresOf(example)).slice(0, 5)).toEqual([]);
  });
});
