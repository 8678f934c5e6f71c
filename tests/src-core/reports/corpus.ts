import type { Example } from "../../../src-core/checks/rule.ts";
import type { LayoutName } from "../../../src-core/model/layouts/layout.ts";
import { rightEncoders as fiveByte } from "./right-encoders/five-byte.ts";
import { rightEncoders as middleButton } from "./right-encoders/middle-button.ts";
import { rightEncoders as ps2FiveButton } from "./right-encoders/ps2-five-button.ts";
import { rightEncoders as ps2Standard } from "./right-encoders/ps2-standard.ts";
import { rightEncoders as ps2Wheel } from "./right-encoders/ps2-wheel.ts";
import { rightEncoders as twoButton } from "./right-encoders/two-button.ts";
import { rightEncoders as wheel } from "./right-encoders/wheel.ts";

// What these make is compared with the tables of the layouts' documents in tests/oracle/reports.

/** Encoders without a fault, by layout. */
export const rightEncoders: Readonly<Record<LayoutName, Readonly<Record<string, Example>>>> = {
  "two-button": twoButton,
  "middle-button": middleButton,
  wheel,
  "five-byte": fiveByte,
  "ps2-standard": ps2Standard,
  "ps2-wheel": ps2Wheel,
  "ps2-five-button": ps2FiveButton,
};
