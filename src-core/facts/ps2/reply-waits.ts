import type { Chip } from "../../model/chips/chip.ts";
import { codeOf } from "../../model/commands.ts";
import { visibleRange } from "../../reader/tokens.ts";
import { delayOf } from "../board/delay-calls.ts";
import type { LoopEvent } from "../walk/events.ts";
import { eachOnce, inOrder } from "../walk/in-order.ts";
import type { LineTraces } from "./line-traces.ts";
import type { ReplyWait, WaitLimit } from "./ps2-facts.ts";
import { waitOf } from "./reset-waits.ts";
import type { PathItem, SendItem } from "./sending-paths.ts";
import { sentByte } from "./sequences.ts";

/**
 * How long the mouse is given to answer each byte of a path: the longest wait for the lines before the next byte, and
 * delays in front of it. Left out are bytes after which some wait has no limit, or one whose length is not known, and the
 * reset, whose self-test takes longer than any answer.
 */
export function replyWaits(
  path: readonly PathItem[],
  lines: LineTraces,
  chip: Chip | undefined,
): ReplyWait[] {
  const waits: ReplyWait[] = [];
  for (const [index, item] of path.entries()) {
    if (item.kind !== "send" || item.byte === codeOf("reset")) continue;
    const next = path.findIndex((later, at) => at > index && later.kind === "send");
    const wait = waitAfter(item, path.slice(index + 1, next < 0 ? undefined : next), lines, chip);
    if (wait !== undefined) waits.push(wait);
  }
  return waits;
}

function waitAfter(
  sent: SendItem,
  between: readonly PathItem[],
  lines: LineTraces,
  chip: Chip | undefined,
): ReplyWait | undefined {
  let delays = 0;
  let before = 0;
  let on: string | undefined;
  let longest: WaitLimit | undefined;
  for (const item of between) {
    if (item.kind === "unknown") return undefined;
    if (item.kind === "delay") {
      if (item.us === undefined) return undefined;
      delays += (item.us * item.times) / 1000;
      continue;
    }
    const waited = item.kind === "loop" ? waitedFor(item.loop, lines) : undefined;
    if (item.kind !== "loop" || waited === undefined) continue;
    const limit = item.loop.form === "counted" ? countedLooks(item.loop) : waitOf(item, chip);
    if (limit === undefined || limit === "unlimited" || limit === "nothing") return undefined;
    // Where a handler sends, what is waited for first is that the byte is gone.
    if (longest === undefined || waited !== on) {
      before = delays;
      longest = limit;
    } else if (limit.ms > longest.ms) longest = limit;
    on = waited;
    delays = 0;
  }
  return longest && { sent: sentByte(sent, false), ms: before + longest.ms, limit: longest };
}

/** Names of what a loop waits for, where that is a line or what the clock's handler writes. */
function waitedFor(loop: LoopEvent, lines: LineTraces): string | undefined {
  // Where pins change, something is sent again and again; that is no wait.
  if (loop.passes.some((pass) => eachOnce(pass).some(({ kind }) => kind === "pin"))) return undefined;
  for (const trace of loop.waitsFor) {
    const of = lines.of(trace);
    if (of !== undefined) return of.kind === "level" ? "lines" : of.name;
  }
  return undefined;
}

/** So many looks with a delay between them; undefined where nothing tells how long a look takes. */
function countedLooks(loop: LoopEvent): WaitLimit | undefined {
  const { turns } = loop;
  let us = 0;
  for (const event of inOrder(loop.passes[0] ?? [])) {
    const delay = event.kind === "outside-call" ? delayOf(event, undefined) : undefined;
    if (delay === undefined) continue;
    if (delay.us === undefined) return undefined;
    us += delay.us;
  }
  if (turns === undefined || us === 0) return undefined;
  const { statement } = loop;
  const condition = statement.kind === "for" || statement.kind === "while" ? statement.condition : undefined;
  const count = condition?.kind === "compare" ? condition.right : undefined;
  const at = count?.at ?? { first: statement.at.first, last: statement.at.first };
  return {
    kind: "time-out",
    ms: (us * turns) / 1000,
    unitMs: count === undefined ? undefined : us / 1000,
    expression: count,
    span: visibleRange(at.first, at.last),
  };
}
