import { clockUnknown } from "./board/clock-unknown.ts";
import { delayInIsr } from "./board/delay-in-isr.ts";
import { divisorRange } from "./board/divisor-range.ts";
import { integerOverflow } from "./board/integer-overflow.ts";
import { pinConflict } from "./board/pin-conflict.ts";
import { pinNoInterrupt } from "./board/pin-no-interrupt.ts";
import { sharedNotAtomic } from "./board/shared-not-atomic.ts";
import { sharedNotVolatile } from "./board/shared-not-volatile.ts";
import { mismatch } from "./note/mismatch.ts";
import { syntax } from "./note/syntax.ts";
import { unattached } from "./note/unattached.ts";
import { unknownName } from "./note/unknown-name.ts";
import { ackIgnored } from "./ps2/ack-ignored.ts";
import { argumentRange } from "./ps2/argument-range.ts";
import { clockMissed } from "./ps2/clock-missed.ts";
import { commandUnknown } from "./ps2/command-unknown.ts";
import { lineDrivenHigh } from "./ps2/line-driven-high.ts";
import { noPullUp } from "./ps2/no-pullup.ts";
import { packetResync } from "./ps2/packet-resync.ts";
import { parityUnchecked } from "./ps2/parity-unchecked.ts";
import { parityWrong } from "./ps2/parity-wrong.ts";
import { replyTimeoutShort } from "./ps2/reply-timeout-short.ts";
import { reportingNotEnabled } from "./ps2/reporting-not-enabled.ts";
import { requestHoldShort } from "./ps2/request-hold-short.ts";
import { resetWaitShort } from "./ps2/reset-wait-short.ts";
import { sampleEdge } from "./ps2/sample-edge.ts";
import { waitForever } from "./ps2/wait-forever.ts";
import { wheelSequence } from "./ps2/wheel-sequence.ts";
import { buttonMap } from "./report/button-map.ts";
import { clipMissing } from "./report/clip-missing.ts";
import { countsLost } from "./report/counts-lost.ts";
import { layout } from "./report/layout.ts";
import { length } from "./report/length.ts";
import { signLost } from "./report/sign-lost.ts";
import { syncBit } from "./report/sync-bit.ts";
import { yDirection } from "./report/y-direction.ts";
import type { Rule } from "./rule.ts";
import { baudError } from "./serial/baud-error.ts";
import { bitTime } from "./serial/bit-time.ts";
import { blocksReceive } from "./serial/blocks-receive.ts";
import { controlLineIgnored } from "./serial/control-line-ignored.ts";
import { identLate } from "./serial/ident-late.ts";
import { identMissing } from "./serial/ident-missing.ts";
import { identWrong } from "./serial/ident-wrong.ts";
import { idleLevel } from "./serial/idle-level.ts";
import { lineFormat } from "./serial/line-format.ts";
import { throughput } from "./serial/throughput.ts";

/** Every rule that this version checks, by group; `rule-ids.ts` has the whole catalogue. A new rule is a new file and a line here. */
export const rules: readonly Rule[] = [
  clockUnknown,
  divisorRange,
  integerOverflow,
  pinNoInterrupt,
  pinConflict,
  sharedNotVolatile,
  sharedNotAtomic,
  delayInIsr,
  baudError,
  lineFormat,
  bitTime,
  idleLevel,
  identMissing,
  identLate,
  identWrong,
  controlLineIgnored,
  throughput,
  blocksReceive,
  requestHoldShort,
  lineDrivenHigh,
  noPullUp,
  commandUnknown,
  argumentRange,
  wheelSequence,
  reportingNotEnabled,
  resetWaitShort,
  clockMissed,
  sampleEdge,
  packetResync,
  ackIgnored,
  replyTimeoutShort,
  waitForever,
  parityUnchecked,
  parityWrong,
  layout,
  syncBit,
  yDirection,
  signLost,
  clipMissing,
  buttonMap,
  length,
  countsLost,
  syntax,
  unknownName,
  mismatch,
  unattached,
];

/** The rule with this id, or undefined. */
export function ruleOf(id: string): Rule | undefined {
  return rules.find((rule) => rule.id === id);
}
