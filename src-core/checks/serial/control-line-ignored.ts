// A PC may turn RTS off and on at any time, as when a second program loads its driver. The adapter starts anew each
// time.

import { quantity } from "../../model/quantities.ts";
import { formatSources } from "../../model/sources.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";

export const controlLineIgnored: Rule = {
  id: "serial/control-line-ignored",
  title: "A PC that asks again and gets no answer",
  severity: "error",
  why: "The first program finds the mouse; after a restart of the PC, or in the next program, there is none until the adapter is unplugged.",
  wrong: firmwareWith(
    "  if (is_on && !was_on) asked = true;\n  was_on = is_on;",
    "  if (is_on && !was_on) asked = was_on = true;",
  ),
  right: rightFirmware,
  source: formatSources(quantity("serial.reset-hold")?.sources ?? []),
  judge: (trials) => draftsOfRuns("serial/control-line-ignored", trials),
};
