// Each byte of the mouse has a parity bit, odd with the data. A byte in which it is wrong is to be left out together
// with its report, or asked for again.

import { layouts } from "../../model/report-layouts.ts";
import { formatSources } from "../../model/sources.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";

export const parityUnchecked: Rule = {
  id: "ps2/parity-unchecked",
  title: "A byte from the mouse that is taken with wrong parity",
  severity: "warning",
  why: "A disturbance on the cable is taken for movement: the pointer jumps across the screen, or a button seems pressed.",
  wrong: firmwareWith("if (bit && (ones & 1)) {", "if (bit) {"),
  right: rightFirmware,
  source: formatSources(layouts["ps2-standard"].sources),
  judge: (trials) => draftsOfRuns("ps2/parity-unchecked", trials),
};
