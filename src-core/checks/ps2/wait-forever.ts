// Every edge of the clock comes from the mouse. Where none is plugged in, where one is pulled out, or where it missed
// the request to send, a loop that waits for an edge never ends, and with it stops everything else that the adapter does.
//
// The rule looks at loops that wait for the level of a line, or for something that only the clock's handler writes,
// and that neither a count nor a time nor anything else ends. Loops of one function are told together.

import type { EndlessWait } from "../../facts/ps2/ps2-facts.ts";
import { timeText } from "../../figures.ts";
import { spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { registerHost } from "./frames.ts";
import { pinPlaces } from "./pin-places.ts";
import { known, sourcesOf } from "./sources.ts";

const start = known("ps2.start-timeout");
const send = known("ps2.send-timeout");
const receive = known("ps2.receive-timeout");

const listening = (wait: string): string =>
  registerHost(
    100,
    `int main(void) {
  command(0xF4);
  for (;;) {
${wait}    PORTB = ps2_read();
  }
}
`,
  );

export const waitForever: Rule = {
  id: "ps2/wait-forever",
  title: "A wait for the mouse that nothing ends",
  severity: "warning",
  why:
    "Without a mouse, or with one that missed a bit, no edge comes any more and the firmware stands still in this loop: it " +
    "does not answer the PC either, until it is switched off and on again.",
  wrong: { "main.c": listening("    while (PIND & _BV(PD2)) {\n    }\n") },
  right: { "main.c": listening("") },
  source: sourcesOf(send),
  *check(facts) {
    for (const wait of facts.ps2.endlessWaits) {
      yield {
        span: spanOf(wait.span),
        message: `nothing but ${cause(wait)} ends this wait; give up by count or time, after ${limit}`,
        source: sourcesOf(wait.on.kind === "level" ? send : receive),
        related: [
          ...wait.others.map((span) => ({ span: spanOf(span), message: "so does this wait" })),
          ...pinPlaces(facts, ["clock"]),
        ],
        fixes: [],
      } satisfies Draft;
    }
  },
  judge: (trials) => draftsOfRuns("ps2/wait-forever", trials),
};

const limit =
  `${timeText((start.min ?? 0) * 1000)} for the first clock after a request to send and ` +
  `${timeText((send.min ?? 0) * 1000)} for a byte`;

function cause({ on }: EndlessWait): string {
  return on.kind === "level"
    ? `the ${on.line} line`
    : `${on.name}, which only the handler of the clock changes,`;
}
