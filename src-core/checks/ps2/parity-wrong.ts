// Data and parity bit have an odd number of ones together. The rule looks at the bits that were on the wire.

import { quantity } from "../../model/quantities.ts";
import { formatSources } from "../../model/sources.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";

export const parityWrong: Rule = {
  id: "ps2/parity-wrong",
  title: "A byte that is sent to the mouse with wrong parity",
  severity: "error",
  why: "The mouse refuses the byte and asks for it again, each time: it is never set up. Some mice take it all the same, which hides the fault on the desk.",
  wrong: firmwareWith("  bool parity = true;", "  bool parity = false;"),
  right: rightFirmware,
  source: formatSources(quantity("ps2.attempts")?.sources ?? []),
  judge: (trials) => draftsOfRuns("ps2/parity-wrong", trials),
};
