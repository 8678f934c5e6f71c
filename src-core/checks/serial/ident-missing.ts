// A PC turns RTS on and waits for the identification of a mouse.

import { quantity } from "../../model/quantities.ts";
import { formatSources } from "../../model/sources.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";

export const identMissing: Rule = {
  id: "serial/ident-missing",
  title: "A PC that asks for the mouse and gets no answer",
  severity: "error",
  why: "The PC's driver says that there is no mouse, and does not load.",
  wrong: firmwareWith("    UDR0 = 'M';\n    return;", "    return;"),
  right: rightFirmware,
  source: formatSources(quantity("serial.ident-delay")?.sources ?? []),
  judge: (trials) => draftsOfRuns("serial/ident-missing", trials),
};
