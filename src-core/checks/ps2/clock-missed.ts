// A mouse clocks a bit every 60 to 100 us and waits for nobody. Whatever keeps the firmware from looking at the clock
// for longer, interrupts that are off or another handler, costs a bit, and with it the byte and the report.

import { quantity } from "../../model/quantities.ts";
import { formatSources } from "../../model/sources.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";

export const clockMissed: Rule = {
  id: "ps2/clock-missed",
  title: "An edge of the mouse's clock that is missed",
  severity: "error",
  why: "An edge that is missed shifts all bits behind it: the byte fails its parity at best, and at worst the pointer jumps and buttons are pressed that nobody touched.",
  wrong: firmwareWith(
    "static bool serve_mouse(void) {\n",
    "static bool serve_mouse(void) {\n  cli();\n  _delay_us(150);\n  sei();\n",
  ),
  right: rightFirmware,
  source: formatSources(quantity("ps2.clock-period")?.sources ?? []),
  judge: (trials) => draftsOfRuns("ps2/clock-missed", trials),
};
