// After a reset (FF) the mouse acknowledges with FA and then tests itself before it sends AA and its id. How long the
// test takes differs from mouse to mouse, up to a second; hosts wait one to four seconds. Firmware that goes on too
// early talks to a mouse that does not listen, and takes AA for the answer to something else.
//
// The rule adds up what the firmware waits between FF and the next byte it sends: delays, time-outs on millis() or
// micros(), and counted loops with a delay in them. One wait without a limit is that for the acknowledge; a second
// one, or a loop until AA, waits as long as it takes and is left alone, and so is anything whose time is not known.

import type { ResetWait } from "../../facts/ps2/ps2-facts.ts";
import { timeText } from "../../figures.ts";
import type { Fix } from "../../finding.ts";
import { literalToken, replaced, spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { constantTooLow } from "./constants.ts";
import { registerHost } from "./frames.ts";
import { known, sourcesOf } from "./sources.ts";

const wait = known("ps2.reset-wait");
const least = wait.min ?? 0;
const selfTest = known("ps2.self-test");

const resetting = (delay: number): string =>
  registerHost(
    100,
    `int main(void) {\n  command(0xFF);\n  _delay_ms(${delay});\n  command(0xF4);\n  for (;;) {\n    ps2_read();\n  }\n}\n`,
  );

export const resetWaitShort: Rule = {
  id: "ps2/reset-wait-short",
  title: "The self-test after a reset is not waited for",
  severity: "warning",
  why:
    `A quick mouse answers after ${timeText((selfTest.min ?? 0) * 1000)}, a slow one after ` +
    `${timeText((selfTest.max ?? 0) * 1000)}. Firmware that does not wait works with the mouse it was written with and ` +
    "finds no mouse with the next.",
  wrong: { "main.c": resetting(20) },
  right: { "main.c": resetting(1000) },
  source: sourcesOf(wait),
  *check(facts) {
    const { resets } = facts.ps2;
    for (const each of resets) {
      if (each.ms === undefined || each.ms + (each.decides?.looksMs ?? 0) >= least) continue;
      yield shortWait(each, each.ms);
    }
    const judged = resets.flatMap(({ decides }) => decides?.expression ?? []);
    yield* constantTooLow(facts, wait, judged, "after a reset the mouse is to be given");
  },
  judge: (trials) => draftsOfRuns("ps2/reset-wait-short", trials),
};

function shortWait({ sent, decides }: ResetWait, ms: number): Draft {
  const waited =
    decides === undefined
      ? "the self-test after the reset is not waited for"
      : `the mouse is given ${timeText(ms * 1000)} for its self-test after the reset`;
  return {
    span: spanOf(decides?.span ?? sent.span),
    message: `${waited}; some need longer, so wait ${timeText(least * 1000)} for AA`,
    measured: { value: ms, unit: "ms" },
    limit: { atLeast: least, unit: "ms" },
    source: sourcesOf(wait),
    related: decides === undefined ? [] : [{ span: spanOf(sent.span), message: "the reset is sent here" }],
    fixes: lengthened(decides, ms),
  };
}

function lengthened(decides: ResetWait["decides"], ms: number): readonly Fix[] {
  const token = decides?.expression && literalToken(decides.expression);
  if (decides?.unitMs === undefined || token === undefined) return [];
  const value = Math.ceil((least - (ms - decides.ms)) / decides.unitMs);
  return [{ title: `Wait ${timeText(least * 1000)}`, edits: [replaced(token, String(value))] }];
}
