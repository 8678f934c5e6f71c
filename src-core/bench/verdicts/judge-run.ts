import type { Run } from "../run-record.ts";
import { FindingsOfRun } from "./findings.ts";
import { judgeLostInMouse } from "./judge-lost-in-mouse.ts";
import { judgeObservations } from "./judge-observations.ts";
import { judgeStandstill } from "./judge-standstill.ts";
import { judgeMotion } from "./motion/judge-motion.ts";
import { hostSide } from "./ps2/host-frames.ts";
import { judgeBits } from "./ps2/judge-bits.ts";
import { judgeConversation } from "./ps2/judge-conversation.ts";
import { BUSY_AFTER_CLOCK, judgeHolds } from "./ps2/judge-holds.ts";
import { judgeSettingUp } from "./ps2/judge-setting-up.ts";
import { judgeBitTimes } from "./serial/judge-bit-times.ts";
import { judgeFlood } from "./serial/judge-flood.ts";
import { judgeIdentification } from "./serial/judge-identification.ts";
import { judgeIdleLevel } from "./serial/judge-idle-level.ts";
import type { Verdict } from "./verdict.ts";

/**
 * Everything that is to be said of one run. A firmware that stands still, or a line that rests at the wrong level, explains
 * what else would be said of what the PC received.
 */
export function judgeRun(run: Run): Verdict {
  const findings = new FindingsOfRun();
  const host = hostSide(run.edges, BUSY_AFTER_CLOCK);
  const held = judgeHolds(host, findings);
  for (const frame of host.frames) judgeBits(frame, findings);
  judgeConversation(host.frames, run.mouse.sent, run.ended, findings);
  judgeObservations(run, findings);
  judgeIdleLevel(run, findings);
  const standsStill = judgeStandstill(run, findings);
  const isExplained = standsStill || findings.has("serial/idle-level");
  if (!standsStill) judgeSettingUp(run, findings);
  // What is explained is still measured, and told by nobody.
  const unexplained = isExplained ? new FindingsOfRun() : findings;
  judgeBitTimes(run, unexplained);
  judgeFlood(run, unexplained);
  judgeLostInMouse(run, host, unexplained);
  const identifications = judgeIdentification(run, unexplained);
  const motion = judgeMotion(run, unexplained);
  return {
    failures: findings.failures,
    figures: {
      ...motion,
      identifications,
      measured: isExplained ? [...findings.measured, ...unexplained.measured] : findings.measured,
      bytes: {
        received: run.pc.bytes.length,
        framingErrors: run.pc.bytes.filter(({ fault }) => fault !== undefined).length,
        discarded: run.pc.discarded.reduce((sum, { bytes }) => sum + bytes.length, 0),
      },
      held,
    },
  };
}
