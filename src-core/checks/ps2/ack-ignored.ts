// A mouse that could not read a byte answers FE, and wants it once more. The rule also tells of a byte whose
// acknowledge bit did not come.

import { quantity } from "../../model/quantities.ts";
import { formatSources } from "../../model/sources.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";

export const ackIgnored: Rule = {
  id: "ps2/ack-ignored",
  title: "A byte that the mouse refused and that is not sent again",
  severity: "error",
  why: "One disturbed byte, and the mouse stays at the wrong sample rate or never reports at all: the adapter works on nine days of ten.",
  wrong: firmwareWith(
    "    if (reply != SEND_AGAIN) return reply == ACKNOWLEDGE;",
    "    return reply == ACKNOWLEDGE || reply == SEND_AGAIN;",
  ),
  right: rightFirmware,
  source: formatSources(quantity("ps2.attempts")?.sources ?? []),
  judge: (trials) => draftsOfRuns("ps2/ack-ignored", trials),
};
