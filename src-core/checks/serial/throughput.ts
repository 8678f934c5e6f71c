// A mouse may report a hundred times per second, and the line carries 44 three-byte reports at most. Reports are to be
// merged while the line is busy, and one is to be sent only when something changed.

import { quantity } from "../../model/quantities.ts";
import { formatSources } from "../../model/sources.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";

export const throughput: Rule = {
  id: "serial/throughput",
  title: "A serial line that cannot keep up, or is kept busy for nothing",
  severity: "warning",
  why: "The pointer lags behind the hand: a queue grows while the mouse moves, and the pointer goes on when the hand has stopped.",
  wrong: firmwareWith("    if (is_new) return true;", "    return true;"),
  right: rightFirmware,
  source: formatSources(quantity("serial.baud")?.sources ?? []),
  judge: (trials) => draftsOfRuns("serial/throughput", trials),
};
