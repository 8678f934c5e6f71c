// The mouse changes its data line while the clock is high, so the firmware reads it while the clock is low. The other
// way round the mouse reads when the clock rises, so the firmware changes data right after the clock fell.

import { quantity } from "../../model/quantities.ts";
import { formatSources } from "../../model/sources.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";

export const sampleEdge: Rule = {
  id: "ps2/sample-edge",
  title: "A bit read or written while it changes",
  severity: "error",
  why: "A bit that is read or changed at the wrong edge is right with one mouse and wrong with the next, as each clocks at its own speed: commands are refused, or bytes arrive shifted.",
  wrong: firmwareWith("  if (bit) let_go(DATA);\n", "  _delay_us(25);\n  if (bit) let_go(DATA);\n"),
  right: rightFirmware,
  source: formatSources(quantity("ps2.data-settled")?.sources ?? []),
  judge: (trials) => draftsOfRuns("ps2/sample-edge", trials),
};
