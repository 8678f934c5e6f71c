// All counts that the mouse reports go to the PC, and every button goes down and up there as often as on the mouse.
// What does not fit into one report belongs into the next.

import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";
import { sourceOfLayouts } from "./drafts.ts";

export const countsLost: Rule = {
  id: "report/counts-lost",
  title: "Movement or clicks that never reach the PC",
  severity: "error",
  why: "After a quick stroke the pointer is not where the hand is, or a click does nothing.",
  wrong: firmwareWith("    first->dx -= dx;\n    first->dy -= dy;", "    first->dx = first->dy = 0;"),
  right: rightFirmware,
  source: sourceOfLayouts,
  judge: (trials) => draftsOfRuns("report/counts-lost", trials),
};
