import { codeOf } from "../../model/commands.ts";
import type { LineWaits } from "./line-waits.ts";
import type { ReplyWait, WaitLimit } from "./ps2-facts.ts";
import type { PathItem, SendItem } from "./sending-paths.ts";
import { sentByte } from "./sequences.ts";
import type { WaitLimits } from "./wait-limits.ts";

/**
 * How long the mouse is given to answer each byte of a path: the longest wait for the lines before the next byte, and
 * delays in front of it. Left out are bytes after which some wait has no limit, or one whose length is not known, and the
 * reset, whose self-test takes longer than any answer.
 */
export function replyWaits(path: readonly PathItem[], limits: WaitLimits, lines: LineWaits): ReplyWait[] {
  const waits: ReplyWait[] = [];
  for (const [index, item] of path.entries()) {
    if (item.kind !== "send" || item.byte === codeOf("reset")) continue;
    const next = path.findIndex((later, at) => at > index && later.kind === "send");
    const wait = waitAfter(item, path.slice(index + 1, next < 0 ? undefined : next), limits, lines);
    if (wait !== undefined) waits.push(wait);
  }
  return waits;
}

function waitAfter(
  sent: SendItem,
  between: readonly PathItem[],
  limits: WaitLimits,
  lines: LineWaits,
): ReplyWait | undefined {
  let delays = 0;
  let before = 0;
  let on: string | undefined;
  let longest: WaitLimit | undefined;
  /** How deep the wait lies that those inside it are parts of. */
  let within = Number.POSITIVE_INFINITY;
  for (const item of between) {
    if (item.kind === "unknown") return undefined;
    if (item.kind === "delay") {
      if (item.us === undefined) return undefined;
      delays += (item.us * item.times) / 1000;
      continue;
    }
    if (item.kind !== "loop") continue;
    const { loop } = item;
    const isPart = item.depth > within;
    if (!isPart) within = Number.POSITIVE_INFINITY;
    // What the main loop waits for is no answer.
    if (loop.form === "endless" && !loop.leaves) break;
    const waited = lines.of(loop);
    if (waited === undefined || lines.readsBits(loop)) continue;
    const isOwn = lines.ofItself(loop) !== undefined;
    // Waits that are repeated nobody knows how often, or held up, are none for this answer, if there was one before.
    if (lines.changesPins(loop) || (!isOwn && (loop.turns ?? loop.atMost) === undefined)) break;
    const limit = loop.form === "counted" ? limits.ofLooks(loop) : limits.of(item);
    if (limit === undefined || limit === "unlimited" || limit === "nothing") {
      if (isOwn) return undefined;
      break;
    }
    if (isPart) continue;
    within = item.depth;
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
