// A mouse that could not read a byte answers FE, and wants it once more. The rule also tells of a byte whose
// acknowledge bit did not come.
//
// In the text the rule looks whether anything in the project compares with FA or FE, or hands one of them to a function
// that may. Where nothing does, no byte that is sent can be known to have been taken.

import { hexText } from "../../figures.ts";
import { quantity } from "../../model/quantities.ts";
import { acknowledge, resendRequest } from "../../model/replies.ts";
import { formatSources } from "../../model/sources.ts";
import { spanOf } from "../literal.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";

export const ackIgnored: Rule = {
  id: "ps2/ack-ignored",
  title: "A byte that the mouse refused and that is not sent again",
  severity: "warning",
  why: "One disturbed byte, and the mouse stays at the wrong sample rate or never reports at all: the adapter works on nine days of ten.",
  wrong: firmwareWith(
    `    if (reply != SEND_AGAIN) return reply == ACKNOWLEDGE;
  }
  return false;
`,
    `    return true;
  }
  return false;
`,
  ),
  right: rightFirmware,
  source: formatSources(quantity("ps2.attempts")?.sources ?? []),
  *check(facts) {
    for (const { span } of facts.ps2.unreadAnswers) {
      yield {
        span: spanOf(span),
        message: `nothing looks whether the mouse took what is sent here: it answers ${hexText(acknowledge.code)}, or ${hexText(resendRequest.code)} where it wants the byte again`,
        source: formatSources([...acknowledge.sources, ...resendRequest.sources]),
        related: [],
        fixes: [],
      };
    }
  },
  judge: (trials) => draftsOfRuns("ps2/ack-ignored", trials),
};
