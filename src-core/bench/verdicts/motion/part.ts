import type { ReportLayout } from "../../../model/layouts/layout.ts";
import type { SerialReport } from "../../pcs/reports/report-receiver.ts";
import type { RunPc } from "../../run-record.ts";
import type { Time } from "../../time/time.ts";
import { type Axis, agree, axesOf, outOf, runningSums } from "./axes.ts";
import type { Incoming } from "./incoming.ts";

/**
 * One session of the PC: what it took, and which of the mouse's reports it may have been. Counts from before the
 * session may be kept or forgotten, and at its end the PC cuts off what is still to be sent.
 */
export interface Part {
  readonly out: readonly SerialReport[];
  readonly incoming: readonly Incoming[];
  /** `incoming` before this index came before the session. */
  readonly early: number;
  /** The PC ended it. */
  readonly isCut: boolean;
  readonly ended: Time;
}

export function partsOf(incoming: readonly Incoming[], pc: RunPc, ended: Time): readonly Part[] {
  return pc.sessions.map(({ from, to }, index): Part => {
    const before = pc.sessions[index - 1]?.to ?? 0;
    const until = to ?? ended;
    const here = incoming.filter(({ time }) => time > before && time <= until);
    return {
      out: pc.reports.filter(({ time }) => time > from && time <= until),
      incoming: here,
      early: here.filter(({ time }) => time <= from).length,
      isCut: to !== undefined,
      ended: until,
    };
  });
}

/** The mouse's reports that a session carried: from the first to, but not including, the last. */
export interface Carried {
  readonly first: number;
  readonly last: number;
}

/** Everything that came in the session. */
export function allOf({ early, incoming }: Part): Carried {
  return { first: early, last: incoming.length };
}

/** How spoilt reports are taken: left out or in as they should be, or as somebody reads them who ignores parity. */
export type Taking = "careful" | "careless";

/** Finds reports whose sums are those that came out, on every axis; undefined where there are none. */
export function carriedBy(
  part: Part,
  layout: ReportLayout,
  scale: number,
  taking: Taking,
): Carried | undefined {
  const axes = axesOf(layout).map((axis) => new AxisSums(axis, part, scale, taking));
  const lasts = part.isCut ? range(part.incoming.length, 0) : [part.incoming.length];
  for (const first of range(0, part.early)) {
    for (const last of lasts)
      if (last >= first && axes.every((axis) => axis.fits(first, last))) return { first, last };
  }
  return undefined;
}

function range(from: number, to: number): readonly number[] {
  return Array.from({ length: Math.abs(to - from) + 1 }, (_, index) =>
    from < to ? from + index : from - index,
  );
}

class AxisSums {
  readonly #axis: Axis;
  readonly #part: Part;
  readonly #scale: number;
  readonly #taking: Taking;
  /** Of reports that are not spoilt. */
  readonly #sums: readonly number[];
  readonly #out: number;

  constructor(axis: Axis, part: Part, scale: number, taking: Taking) {
    this.#axis = axis;
    this.#part = part;
    this.#scale = scale;
    this.#taking = taking;
    this.#sums = runningSums(
      part.incoming.map(({ values, spoilt }) => (spoilt === undefined ? (values[axis.name] ?? 0) : 0)),
    );
    this.#out = part.out.reduce((sum, { values }) => sum + outOf(axis, values), 0);
  }

  fits(first: number, last: number): boolean {
    const sum = (this.#sums[last] ?? 0) - (this.#sums[first] ?? 0);
    let reachable = new Set([sum]);
    for (const { values, spoilt } of this.#part.incoming.slice(first, last)) {
      if (spoilt === undefined) continue;
      const more = new Set(reachable);
      for (const each of reachable) {
        more.add(each + (values[this.#axis.name] ?? 0));
        if (this.#taking === "careless") more.add(each + (spoilt[this.#axis.name] ?? 0));
      }
      reachable = more;
    }
    return [...reachable].some((each) => agree(each, this.#out, this.#scale));
  }
}
