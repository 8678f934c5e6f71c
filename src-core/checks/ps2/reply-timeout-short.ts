// A mouse may take its time until it begins to clock a byte in, and until it answers. Mouse chips differ by a factor
// of ten.

import { quantity } from "../../model/quantities.ts";
import { formatSources } from "../../model/sources.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";

export const replyTimeoutShort: Rule = {
  id: "ps2/reply-timeout-short",
  title: "A mouse that is not given the time to answer",
  severity: "error",
  why: "The mouse on the desk answers at once; another one answers when the firmware has given up already, and is taken for missing.",
  wrong: firmwareWith("#define REPLY_MS 30", "#define REPLY_MS 5"),
  right: rightFirmware,
  source: formatSources(quantity("ps2.reply-timeout")?.sources ?? []),
  judge: (trials) => draftsOfRuns("ps2/reply-timeout-short", trials),
};
