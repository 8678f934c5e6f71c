// A mouse may take its time until it begins to clock a byte in, and until it answers. Mouse chips differ by a factor
// of ten.
//
// In the text the rule looks at the longest wait between a byte and the next one: time-outs in ms or us, and counted looks
// with a delay between them. Looks that are only counted take a time that the text does not tell.

import type { ReplyWait } from "../../facts/ps2/ps2-facts.ts";
import { hexText, timeText } from "../../figures.ts";
import type { Fix } from "../../finding.ts";
import { literalToken, replaced, spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { registerHost } from "./frames.ts";
import { known, sourcesOf } from "./sources.ts";

const reply = known("ps2.reply-timeout");
const least = reply.min ?? 0;

const enabling = registerHost(
  100,
  "int main(void) {\n  command(0xF4);\n  for (;;) {\n    PORTB = ps2_read();\n  }\n}\n",
);

export const replyTimeoutShort: Rule = {
  id: "ps2/reply-timeout-short",
  title: "A mouse that is not given the time to answer",
  severity: "error",
  why: "The mouse on the desk answers at once; another one answers when the firmware has given up already, and is taken for missing.",
  wrong: { "main.c": enabling.replaceAll("30000", "5000") },
  right: { "main.c": enabling },
  source: sourcesOf(reply),
  *check(facts) {
    const told = new Set<string>();
    for (const wait of facts.ps2.replyWaits) {
      const { file, start } = wait.limit.span;
      if (wait.ms + wait.limit.looksMs >= least || told.has(`${file}:${start}`)) continue;
      told.add(`${file}:${start}`);
      yield shortWait(wait);
    }
  },
  judge: (trials) => draftsOfRuns("ps2/reply-timeout-short", trials),
};

function shortWait({ sent, ms, limit }: ReplyWait): Draft {
  const what = sent.byte === undefined ? "a byte" : hexText(sent.byte);
  return {
    span: spanOf(limit.span),
    message: `the mouse is given ${timeText(ms * 1000)} to answer ${what}; some need ${timeText(least * 1000)}`,
    measured: { value: ms, unit: "ms" },
    limit: { atLeast: least, unit: "ms" },
    source: sourcesOf(reply),
    related: [{ span: spanOf(sent.span), message: "this byte is sent" }],
    fixes: lengthened(limit, ms),
  };
}

function lengthened(limit: ReplyWait["limit"], ms: number): readonly Fix[] {
  const token = limit.expression && literalToken(limit.expression);
  if (limit.unitMs === undefined || token === undefined) return [];
  const value = Math.ceil((least - (ms - limit.ms)) / limit.unitMs);
  return [{ title: `Wait ${timeText(least * 1000)}`, edits: [replaced(token, String(value))] }];
}
