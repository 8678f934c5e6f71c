// A PC waits for the identification for a fraction of a second after it turned RTS on.

import { quantity } from "../../model/quantities.ts";
import { formatSources } from "../../model/sources.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";

export const identLate: Rule = {
  id: "serial/ident-late",
  title: "An identification that comes too late",
  severity: "error",
  why: "A patient driver finds the mouse, a hurried one does not: the adapter works with one program and not with the next.",
  wrong: firmwareWith("    UDR0 = 'M';\n", "    _delay_ms(300);\n    UDR0 = 'M';\n"),
  right: rightFirmware,
  source: formatSources(quantity("serial.ident-delay")?.sources ?? []),
  judge: (trials) => draftsOfRuns("serial/ident-late", trials),
};
