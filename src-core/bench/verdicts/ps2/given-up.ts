import type { Span } from "../../../finding.ts";
import { codeOf } from "../../../model/commands.ts";
import { selfTestPassed } from "../../../model/replies.ts";
import type { At } from "../../../reader/typed/nodes.ts";
import { spanOf } from "../../observing/code-places.ts";
import type { HostByte, MouseByte, Run, Whereabout } from "../../run-record.ts";
import { figure } from "../../time/figures.ts";
import { ms, type Time } from "../../time/time.ts";

const REPLY_TIMEOUT = figure("ps2.reply-timeout", "min");
const RESET = codeOf("reset");
/** What the code does with an answer it does within this; our own choice. */
const REACTION = 1 * ms;
/** A place that is still in the loop stays unseen by chance so seldom at most, by our own choice. */
const CHANCE = 0.01;
/** So many looks at the place that is found are not counted: among many places of a loop some are seen more often than they are there. */
const LUCK = 2;

/** A wait for the mouse that the code left before the answer came, although that came in time. */
export interface GivenUp {
  readonly quantity: "ps2.reply-timeout" | "ps2.reset-wait";
  readonly rule: "ps2/reply-timeout-short" | "ps2/reset-wait-short";
  readonly what: string;
  /** Since the command, or since the answer before. */
  readonly waited: Time;
  readonly time: Time;
  /** Where it waited. */
  readonly at: At;
}

/**
 * The first such wait in a part of a run. The wires do not show it: it is found from where the code was. A firmware that looks for
 * answers in passing is always on its way, and nothing is said of it; one that pauses before it looks is at another place then, and
 * leaves that when the answer comes.
 */
export function givenUpIn({ mouse, firmware, ended }: Run, from: Time, to: Time): GivenUp | undefined {
  const { afterCommands = [], places } = firmware;
  const loops = places?.loops ?? [];
  for (const [index, command] of mouse.received.entries()) {
    if (command.end < from || command.end > to || command.fault !== "none") continue;
    const until = mouse.received[index + 1]?.start ?? ended;
    const replies = mouse.sent.filter(
      ({ report, whole, start, end }) =>
        report === undefined && whole && start >= command.end && end <= until,
    );
    const [reply] = replies;
    if (reply === undefined || reply.start - command.end > REPLY_TIMEOUT) continue;
    const left = leftBefore(reply, command.end, until, afterCommands, loops);
    if (left !== undefined)
      return {
        quantity: "ps2.reply-timeout",
        rule: "ps2/reply-timeout-short",
        what: "the mouse is given to answer only",
        ...left,
      };
    const test = selfTestIn(command, replies);
    const leftTest = test && leftBefore(test, reply.end, until, afterCommands, loops);
    if (leftTest !== undefined)
      return {
        quantity: "ps2.reset-wait",
        rule: "ps2/reset-wait-short",
        what: "after a reset the mouse is given to test itself only",
        ...leftTest,
      };
  }
  return undefined;
}

function selfTestIn({ byte }: HostByte, replies: readonly MouseByte[]): MouseByte | undefined {
  return byte === RESET ? replies.find((reply) => reply.byte === selfTestPassed.code) : undefined;
}

function leftBefore(
  reply: MouseByte,
  from: Time,
  until: Time,
  looks: readonly Whereabout[],
  loops: readonly Span[],
): Pick<GivenUp, "waited" | "time" | "at"> | undefined {
  const waiting = looks.filter(({ time }) => time > from && time < reply.start);
  const after = looks.filter(({ time }) => time > reply.end + REACTION && time < until);
  const afterwards = new Set(after.map(({ at }) => at));
  const gone = bySight(waiting.filter(({ at }) => !afterwards.has(at)));
  // The loop that waits stands in the code that gives up; what it calls may stand anywhere.
  const wait = gone.find(({ at }) => isWithin(at, loops)) ?? gone[0];
  const last = wait?.times.at(-1);
  if (wait?.at === undefined || last === undefined) return undefined;
  const since = waiting.filter(({ time }) => time > last);
  const share = (wait.times.length - LUCK) / (waiting.length - since.length);
  if (share <= 0 || (1 - share) ** since.length > CHANCE) return undefined;
  // Whoever waits for the answer elsewhere now leaves that place when it comes.
  const [there] = bySight(since);
  if (there === undefined || !afterwards.has(there.at)) return undefined;
  return { waited: last - from, time: last, at: wait.at };
}

interface Seen {
  readonly at: At | undefined;
  readonly times: Time[];
}

/** The places of these looks, the one that was seen most often first. */
function bySight(looks: readonly Whereabout[]): readonly Seen[] {
  const seen = new Map<At | undefined, Seen>();
  for (const { time, at } of looks) {
    const before = seen.get(at);
    if (before === undefined) seen.set(at, { at, times: [time] });
    else before.times.push(time);
  }
  return [...seen.values()].toSorted((a, b) => b.times.length - a.times.length);
}

function isWithin(at: At | undefined, loops: readonly Span[]): boolean {
  const span = spanOf(at);
  return (
    span !== undefined &&
    loops.some(({ file, start, end }) => file === span.file && start <= span.start && span.end <= end)
  );
}
