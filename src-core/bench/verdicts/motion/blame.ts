import { plain } from "../../../figures.ts";
import type { Span } from "../../../finding.ts";
import type { ReportValues } from "../../../model/layouts/values.ts";
import type { At } from "../../../reader/typed/nodes.ts";
import type { Observation, Run } from "../../run-record.ts";
import { figure } from "../../time/figures.ts";
import { ms, second, type Time } from "../../time/time.ts";
import { startOfByte } from "../serial/start-of-byte.ts";
import { agree, axesOf, outOf } from "./axes.ts";
import { explain } from "./counts.ts";
import { type Incoming, keepsItsPlace } from "./incoming.ts";
import type { Part } from "./part.ts";
import type { Turn } from "./turned.ts";

/** Why counts do not agree, as far as the run tells. */
export interface Blame {
  readonly rule: string;
  readonly what: string;
  readonly time: Time;
  readonly at: At | undefined;
  /** What is told where `at` is undefined. */
  readonly otherwise?: Span | undefined;
}

/** What went out before a disturbance may come out so much later. */
const DELAY = figure("serial.report-delay", "max");

/** Happenings and cut bytes that a firmware has to find its way back from. */
const DISTURBING: readonly string[] = ["glitch", "unplugged", "powered", "self-test"];

/** Undefined where the run tells that already, by what the chip saw. */
export function blameFor(part: Part, run: Run): Blame | undefined {
  const { layout, scale } = run.wanted;
  const { places } = run.firmware;
  const spoilt = part.incoming.find((each) => each.spoilt !== undefined);
  if (spoilt !== undefined && explain(part, layout, scale, "careless").every(({ agrees }) => agrees)) {
    const what = "a report with wrong parity was used as it came, instead of being asked for again";
    return {
      rule: "ps2/parity-unchecked",
      what,
      time: spoilt.time,
      at: undefined,
      otherwise: places?.receives,
    };
  }
  const { agreed, strayed, at } = strayedAt(part, run, ({ values }) => values);
  const seen = run.firmware.observations.find(({ time }) => time >= agreed - DELAY && time <= strayed);
  if (seen !== undefined) return seen.kind === "edge-missed" ? missedEdge(seen, run) : undefined;
  const disturbed = lastDisturbance(agreed - DELAY, strayed, run);
  if (disturbed !== undefined && (isTakenThoughWrong(disturbed, run) || isCareless(part, run))) {
    const what = "a byte with wrong parity was taken as it came, and the report that it belongs to was lost";
    return {
      rule: "ps2/parity-unchecked",
      what,
      time: disturbed,
      at: undefined,
      otherwise: places?.receives,
    };
  }
  if (disturbed !== undefined) {
    const what = `after a disturbance at ${plain(disturbed / ms, 1)} ms the reports of the mouse are put together wrongly`;
    const otherwise = places?.collects ?? places?.receives;
    // Without a source the outgoing report that strays is all there is.
    const known = otherwise === undefined ? at : undefined;
    return { rule: "ps2/packet-resync", what, time: disturbed, at: known, otherwise };
  }
  const what = "counts get lost on the way";
  const otherwise = places?.main;
  return { rule: "report/counts-lost", what, time: strayed, at: at ?? lastSender(run), otherwise };
}

/** Where the first movement goes out. */
export function blameForTurn({ rule, what }: Turn, { out }: Part, run: Run): Blame {
  const first = out.find(({ values: { x = 0, y = 0 } }) => x !== 0 || y !== 0);
  const at = (first && startOfByte(run.edges, first.from)) ?? lastSender(run);
  return { rule, what, time: first?.time ?? run.ended, at, otherwise: run.firmware.places?.main };
}

/** The code that sent to the PC last. */
export function lastSender({ edges }: Run): At | undefined {
  return edges.findLast(({ wire, cause }) => wire === "rxd" && cause.party === "firmware")?.cause.at;
}

/**
 * What ended at this moment is a byte with wrong parity that looks out of place, and the mouse was not asked for it again
 * before the next report. Taken as it came, any other byte spoils its own report alone: where more is lost, it was left out.
 */
function isTakenThoughWrong(time: Time, { mouse, ended, edges }: Run): boolean {
  const wrong = mouse.sent.find(({ end, disturbed }) => disturbed && end === time);
  if (wrong === undefined || keepsItsPlace(wrong, mouse, edges)) return false;
  const next = mouse.sent.find(({ start, report }) => start > time && report !== wrong.report);
  const until = next?.start ?? ended;
  return !mouse.received.some(({ end, fault }) => fault === "none" && end > time && end < until);
}

/** An edge of the mouse's clock came while the one before was not served: while the code sent a byte to the PC, or not. */
function missedEdge(seen: Observation, run: Run): Blame {
  const { time, at } = seen;
  return seen.waitsForUart === true || isSending(time, run)
    ? { rule: "serial/blocks-receive", what: "while a byte goes to the PC, the mouse is not heard", time, at }
    : { rule: "ps2/clock-missed", what: "an edge of the mouse's clock was missed", time, at };
}

/**
 * The code itself moves the line, bit by bit: outside of handlers, or more than once in one run of a handler. A part of the chip needs no
 * code for it, and a handler that is called for each bit is done with it soon.
 */
function isSending(time: Time, { pc, wanted, edges }: Run): boolean {
  const bit = second / wanted.baud;
  const byte = (wanted.layout.dataBits + 2) * bit;
  const going = pc.bytes.find(({ from }) => time >= from - bit && time <= from + byte);
  if (going === undefined) return false;
  const runs = edges.flatMap(({ wire, time: moved, cause: { party, run } }) =>
    wire === "rxd" && party === "firmware" && moved >= going.from - bit && moved <= going.from + byte
      ? [run]
      : [],
  );
  return runs.some((run, index) => run === 0 || (run !== undefined && runs.indexOf(run) !== index));
}

/** Who takes spoilt reports as they came agrees longer with what goes out than who leaves them out, or takes them right. */
function isCareless(part: Part, run: Run): boolean {
  const nothing: ReportValues = {};
  const agreedBy = (taken: (report: Incoming) => ReportValues): Time => strayedAt(part, run, taken).agreed;
  const asTheyCame = agreedBy(({ values, spoilt }) => spoilt ?? values);
  const leftOut = agreedBy(({ values, spoilt }) => (spoilt === undefined ? values : nothing));
  return (
    asTheyCame >
    Math.max(
      leftOut,
      agreedBy(({ values }) => values),
    )
  );
}

interface Strayed {
  readonly agreed: Time;
  readonly strayed: Time;
  /** The code that sent the report that strays. */
  readonly at: At | undefined;
}

/**
 * The last outgoing report behind which the sums are those of some state of the incoming ones, or else the first incoming
 * one; and the one after it.
 */
function strayedAt(
  { out, incoming, ended }: Part,
  { wanted, edges }: Run,
  taken: (report: Incoming) => ReportValues,
): Strayed {
  const axes = axesOf(wanted.layout);
  const sums = axes.map(() => 0);
  const states: number[][] = [axes.map(() => 0)];
  for (const report of incoming) {
    const values = taken(report);
    const before = states.at(-1) ?? [];
    states.push(axes.map(({ name }, axis) => (before[axis] ?? 0) + (values[name] ?? 0)));
  }
  let agreed: Time | undefined;
  for (const { time, values } of out) {
    for (const [index, axis] of axes.entries()) sums[index] = (sums[index] ?? 0) + outOf(axis, values);
    const isKnown = states.some((state) =>
      axes.every((axis, each) => agree(axis, state[each] ?? 0, sums[each] ?? 0, wanted.scale)),
    );
    if (isKnown) agreed = time;
  }
  const first = out.find(({ time }) => agreed === undefined || time > agreed);
  return {
    agreed: agreed ?? incoming[0]?.time ?? 0,
    strayed: first?.time ?? ended,
    at: first && startOfByte(edges, first.from),
  };
}

/** The last one between both: the reports behind it are those that stray. */
function lastDisturbance(from: Time, to: Time, { mouse }: Run): Time | undefined {
  const times = [
    ...mouse.happenings.filter(({ kind }) => DISTURBING.includes(kind)).map(({ time }) => time),
    ...mouse.sent.filter(({ whole, disturbed }) => !whole || disturbed).map(({ end }) => end),
  ];
  return times.filter((time) => time >= from && time <= to).toSorted((a, b) => b - a)[0];
}
