import { ms, type Time } from "../../bench/time/time.ts";
import type { SimulatedRun } from "../../simulation-result.ts";
import type { TimeWindow } from "./ribbon.ts";
import { slowestOf, threadsOfRun } from "./threads.ts";
import { duration } from "./time-axis.ts";

/** So wide that a report of the mouse can be seen, and its way to the PC; our own choice. */
const usual = 60 * ms;
const widest = 120 * ms;
/** So narrow that the bits of a mouse can be seen. */
const narrow = 4 * ms;
/** What of a close-up is shown before the moment of interest. */
const lead = 1 / 6;
/** A close-up of nearly the whole shows nothing more. */
const worthwhile = 0.6;

export interface CloseUp {
  readonly title: string;
  readonly window: TimeWindow;
}

/** The moment of a run that is worth a closer look: the first fault, else the slowest report, else the first question of the PC. */
export function closeUpOf(run: SimulatedRun): CloseUp | undefined {
  const found = firstFault(run) ?? slowestThread(run) ?? firstQuestion(run);
  if (found === undefined) return undefined;
  const { from, to } = found.window;
  return to - from < run.ended * worthwhile ? found : undefined;
}

function firstFault({ verdict, ended }: SimulatedRun): CloseUp | undefined {
  const [failure] = verdict.failures;
  if (failure === undefined) return undefined;
  const { unit } = failure.measured ?? failure.limit ?? {};
  const length = unit === "us" || unit === "ns" ? narrow : usual;
  return { title: "Close up: where fault 1 was first seen", window: around(failure.time, length, ended) };
}

function slowestThread(run: SimulatedRun): CloseUp | undefined {
  const slowest = slowestOf(threadsOfRun(run));
  if (slowest === undefined) return undefined;
  const { incoming, outgoing, length } = slowest;
  const shown = (outgoing.to - incoming.from) / (1 - 2 * lead);
  const window = around(incoming.from, Math.min(widest, shown), run.ended);
  return { title: `Close up: the slowest report, ${duration(length)} on its way`, window };
}

function firstQuestion({ verdict, ended }: SimulatedRun): CloseUp | undefined {
  const [first] = verdict.figures.identifications;
  if (first === undefined) return undefined;
  return { title: "Close up: the PC asks who is there", window: around(first.asked, usual, ended) };
}

function around(time: Time, length: Time, ended: Time): TimeWindow {
  const from = Math.max(0, Math.min(time - length * lead, ended - length));
  return { from, to: Math.min(ended, from + length) };
}
