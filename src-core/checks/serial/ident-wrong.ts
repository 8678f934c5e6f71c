// The first bytes after RTS came on say what mouse it is, and with it the layout of its reports. Which they are
// follows from the layout that the notes name.

import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";

export const identWrong: Rule = {
  id: "serial/ident-wrong",
  title: "An identification that the PC does not know",
  severity: "error",
  why: "The driver takes the adapter for another mouse, whose reports it reads wrongly, or for none at all.",
  wrong: firmwareWith("UDR0 = 'M';", "UDR0 = 'N';"),
  right: rightFirmware,
  source: "the documents of the layout that the notes name; each finding says which",
  judge: (trials) => draftsOfRuns("serial/ident-wrong", trials),
};
