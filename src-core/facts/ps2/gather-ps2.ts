import type { NoteFacts } from "../../notes/note-facts.ts";
import type { Program } from "../../reader/program/program.ts";
import { visibleRange } from "../../reader/tokens.ts";
import { notedConstants } from "../serial/noted-constants.ts";
import type { Walk } from "../walk/events.ts";
import { collectedReports } from "./collected-reports.ts";
import { findDrivenHigh } from "./driven-high.ts";
import { findEndlessWaits } from "./endless-waits.ts";
import { handlerEdges } from "./handler-edges.ts";
import { LineTraces } from "./line-traces.ts";
import { LineWaits } from "./line-waits.ts";
import { findNotKnown } from "./not-known.ts";
import { polledEdges } from "./polled-edges.ts";
import { portPins } from "./port-pins.ts";
import type { Ps2Facts, RequestHold } from "./ps2-facts.ts";
import { findPullUps } from "./pull-ups.ts";
import { uncheckedParity } from "./received-bytes.ts";
import { replyWaits } from "./reply-waits.ts";
import { findRequests, type Request } from "./requests.ts";
import { resetWaits } from "./reset-waits.ts";
import { findSenders, sendsMore } from "./senders.ts";
import { sendingPaths } from "./sending-paths.ts";
import { findSentFrames } from "./sent-frames.ts";
import { sequencesOf } from "./sequences.ts";
import { unreadAnswers } from "./unread-answers.ts";
import { WaitLimits } from "./wait-limits.ts";

/** Quantities of the model that a note may say of a constant, and that rules about the PS/2 side judge. */
const ps2Constants = [
  "ps2.request-hold",
  "ps2.inhibit-hold",
  "ps2.reset-wait",
  "ps2.sample-rate",
  "ps2.resolution",
] as const;

/** What the firmware does as the host of the PS/2 port, by its walk and by what was said of the wires. */
export function gatherPs2(
  program: Program,
  notes: NoteFacts,
  walk: Walk,
  clockHz: number | undefined,
): Ps2Facts {
  const { chip } = program;
  const { wires } = notes;
  const walks = walk.entries;
  const requests = walks.flatMap((each) => findRequests(each, clockHz));
  const pins = portPins(wires.ps2, walks, requests, chip);
  const own = requests.filter(
    ({ clock, data }) => clock === pins.clock?.pin && (pins.data === undefined || data === pins.data.pin),
  );
  const senders = findSenders(walks, own, pins, program);
  const paths = walks.map((each) => ({ each, items: sendingPaths(each.entry, each.events, senders) }));
  const lines = new LineTraces(walk, pins, chip);
  const limits = new WaitLimits(chip, clockHz);
  const lineWaits = new LineWaits(lines, pins, chip);
  const sequences = paths.flatMap(({ each, items }) => sequencesOf(each, items));
  const facts = {
    clock: pins.clock,
    data: pins.data,
    holds: distinctHolds(own),
    drivenHigh: findDrivenHigh(walks, pins),
    pullUps: findPullUps(wires.ps2, walks, pins),
    senders,
    maySendMore: walk.cutShort || sendsMore(walks, senders),
    sequences,
    resets: paths.flatMap(({ items }) =>
      items.flatMap((path) => resetWaits(path, limits, chip, pins.clock?.pin)),
    ),
    sentFrames: findSentFrames(walks, senders, pins, lines),
    wrongEdges: [...handlerEdges(walk, pins, lines, chip), ...polledEdges(walks, pins, lines, chip)],
    uncheckedParity: uncheckedParity(program, walk, pins, lines, senders),
    unreadAnswers: unreadAnswers(
      program,
      paths.flatMap(({ items }) => items),
      walk.linkage,
    ),
    collectedReports: collectedReports(program, walk, lines, sequences),
    replyWaits: paths.flatMap(({ items }) => items.flatMap((path) => replyWaits(path, limits, lineWaits))),
    endlessWaits: findEndlessWaits(walk, lines),
    constants: notedConstants(notes, ps2Constants),
  };
  return { ...facts, notKnown: findNotKnown(facts, wires.ps2, program) };
}

/** One hold for each place where the clock is pulled low and let go: the shortest. */
function distinctHolds(requests: readonly Request[]): RequestHold[] {
  const holds = new Map<string, RequestHold>();
  for (const request of requests) {
    const { low, release, unknown } = request;
    const hold: RequestHold = {
      us: request.us,
      parts: request.parts,
      unknown: unknown && visibleRange(unknown.first, unknown.last),
      low: visibleRange(low.at.first, low.at.last),
      release: visibleRange(release.at.first, release.at.last),
    };
    const parts = hold.parts.map(({ span }) => `${span.file}:${span.start}`).join(" ");
    const key = `${hold.low.file}:${hold.low.start} ${hold.release.file}:${hold.release.start} ${parts}`;
    const held = holds.get(key);
    if (held === undefined || hold.us < held.us) holds.set(key, hold);
  }
  return [...holds.values()];
}
