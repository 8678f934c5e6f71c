// Each byte of the mouse has a parity bit, odd with the data. A byte in which it is wrong is to be left out together
// with its report, or asked for again.
//
// The rule looks where bits are taken from the data line, by the clock's handler or in a loop that waits for the clock, and
// whether any code that they come to counts ones, turns a flag over, folds bits or asks a function for the parity.

import { formatSources } from "../../model/sources.ts";
import { spanOf } from "../literal.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";
import { pinPlaces } from "./pin-places.ts";

const source = formatSources([
  { document: "ps2ProtocolArticle", place: "Device-to-Host" },
  { document: "auxiliaryDeviceTimings", place: "bit table" },
]);

export const parityUnchecked: Rule = {
  id: "ps2/parity-unchecked",
  title: "A byte from the mouse that is taken with wrong parity",
  severity: "warning",
  why: "A disturbance on the cable is taken for movement: the pointer jumps across the screen, or a button seems pressed.",
  wrong: firmwareWith("if (bit && (ones & 1)) {", "if (bit) {"),
  right: rightFirmware,
  source,
  *check(facts) {
    for (const { span } of facts.ps2.uncheckedParity) {
      yield {
        span: spanOf(span),
        message:
          "the parity bit of bytes from the mouse is not looked at; a byte whose ones, parity included, are even is wrong",
        source,
        related: pinPlaces(facts, ["data"]),
        fixes: [],
      };
    }
  },
  judge: (trials) => draftsOfRuns("ps2/parity-unchecked", trials),
};
