import { hexText, plain } from "../../../figures.ts";
import { codeOf } from "../../../model/commands.ts";
import { resendRequest, selfTestPassed } from "../../../model/replies.ts";
import type { MouseByte } from "../../run-record.ts";
import { figure } from "../../time/figures.ts";
import { ms, type Time } from "../../time/time.ts";
import type { FindingsOfRun } from "../findings.ts";
import type { HostFrame } from "./host-frames.ts";
import { byteOf, isAcknowledged } from "./judge-bits.ts";

const REPLY_TIMEOUT = figure("ps2.reply-timeout", "min");
const RESET_WAIT = figure("ps2.reset-wait", "min");
const RESET = codeOf("reset");
const RESEND = codeOf("resend");

/** What the firmware made of the mouse's answers: whether it waited for them, and whether it took them in. */
export function judgeConversation(
  frames: readonly HostFrame[],
  sent: readonly MouseByte[],
  ended: Time,
  findings: FindingsOfRun,
): void {
  // A report that comes again is the answer to a host that asked for it again.
  const replies = sent.filter(({ report, resent, whole }) => (report === undefined || resent) && whole);
  for (const [index, frame] of frames.entries()) {
    const next = frames[index + 1];
    if (frame.outcome === "unanswered") judgeStartWait(frame, findings);
    if (frame.outcome !== "whole") continue;
    const until = next === undefined ? ended : beginningOf(next);
    const here = replies.filter(({ start, end }) => start >= frame.ended && end <= until);
    const isRefused = !isAcknowledged(frame) || here[0]?.byte === resendRequest.code;
    if (isRefused) judgeRefused(frame, frames[index - 1], next, ended, findings);
    else if (next !== undefined) judgeWaits(frame, next, here, findings);
  }
}

function beginningOf({ held, released }: HostFrame): Time {
  return held ?? released;
}

function judgeStartWait(frame: HostFrame, findings: FindingsOfRun): void {
  const what = "the mouse is given to begin clocking only";
  const waited = frame.ended - frame.released;
  findings.measureTime(
    "ps2.start-timeout",
    waited,
    "ps2/reply-timeout-short",
    what,
    frame.ended,
    frame.cause.at,
  );
}

/** The mouse did not take the byte: it has to be sent again, or the mouse be reset. */
function judgeRefused(
  frame: HostFrame,
  before: HostFrame | undefined,
  next: HostFrame | undefined,
  ended: Time,
  findings: FindingsOfRun,
): void {
  const byte = byteOf(frame) ?? 0;
  const isLate = ended - frame.ended > RESET_WAIT;
  if (next === undefined ? !isLate : isAnotherTry(next, byte, before)) return;
  const then = next === undefined ? "nothing" : hexText(byteOf(next) ?? 0);
  findings.fail({
    rule: "ps2/ack-ignored",
    message: `the mouse did not take ${hexText(byte)}, and ${then} is sent next: send the byte again`,
    time: frame.ended,
    at: (next ?? frame).cause.at,
  });
}

/** The same byte, the command before it whose argument it was, a reset, or something that cannot be read. */
function isAnotherTry(next: HostFrame, byte: number, before: HostFrame | undefined): boolean {
  const again = byteOf(next);
  if (again === undefined || again === byte || again === RESET || again === RESEND) return true;
  return before !== undefined && again === byteOf(before);
}

function judgeWaits(
  frame: HostFrame,
  next: HostFrame,
  replies: readonly MouseByte[],
  findings: FindingsOfRun,
): void {
  const begun = beginningOf(next);
  const [reply] = replies;
  if (reply === undefined) {
    const waited = begun - frame.ended;
    const rule = waited < REPLY_TIMEOUT ? "ps2/reply-timeout-short" : undefined;
    findings.measureTime(
      "ps2.reply-timeout",
      waited,
      rule,
      "the mouse is given to answer only",
      begun,
      next.cause.at,
    );
    return;
  }
  if (byteOf(frame) !== RESET || replies.some(({ byte }) => byte === selfTestPassed.code)) return;
  const waited = begun - reply.end;
  if (waited >= RESET_WAIT || byteOf(next) === RESEND) return;
  const what = `after a reset the mouse is spoken to again before its self-test is over, after ${plain(waited / ms, 2)} ms: it is given only`;
  findings.measureTime("ps2.reset-wait", waited, "ps2/reset-wait-short", what, begun, next.cause.at);
}
