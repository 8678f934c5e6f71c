import { plain } from "../../figures.ts";
import type { Limit, Measured, Span } from "../../finding.ts";
import { allows, formatRange, type Quantity } from "../../model/quantities.ts";
import { formatSources } from "../../model/sources.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { At } from "../../reader/typed/nodes.ts";
import { known, unitOf } from "../time/figures.ts";
import type { Time } from "../time/time.ts";
import type { Failure, MeasuredQuantity } from "./verdict.ts";

/** What a measurement says of a fault. */
export interface Fault {
  readonly rule: string;
  readonly message: string;
  readonly time: Time;
  readonly at: At | undefined;
  /** What is told where `at` is undefined. */
  readonly otherwise?: Span | undefined;
  readonly measured?: Measured;
  readonly limit?: Limit;
  readonly source?: string;
}

interface Told {
  failure: Failure;
  distance: number;
}

/** Gathers faults and measured figures of one run. Faults of one rule at one place are one, told at its worst. */
export class FindingsOfRun {
  readonly #told = new Map<string, Told>();
  readonly #measured = new Map<string, MeasuredQuantity>();

  get failures(): readonly Failure[] {
    return [...this.#told.values()].map(({ failure }) => failure).sort((a, b) => a.time - b.time);
  }

  get measured(): readonly MeasuredQuantity[] {
    return [...this.#measured.values()];
  }

  has(rule: string): boolean {
    return this.failures.some((failure) => failure.rule === rule);
  }

  fail(fault: Fault): void {
    const { rule, message, time, at, otherwise, measured, limit, source } = fault;
    const span = at === undefined ? otherwise : visibleRange(at.first, at.last);
    const key = `${rule} ${keyOf(span)} ${limit?.unit}`;
    const before = this.#told.get(key);
    const distance = distanceFrom(limit, measured);
    const failure: Failure = {
      rule,
      message,
      measured,
      limit,
      source,
      time: before?.failure.time ?? time,
      span,
      times: (before?.failure.times ?? 0) + 1,
    };
    if (before === undefined || distance > before.distance) this.#told.set(key, { failure, distance });
    else before.failure = { ...before.failure, times: failure.times };
  }

  /**
   * A quantity of the model as it was in this run, a time or a plain number in the quantity's unit. Outside of its bounds it
   * is a fault of the rule; `what` says who did it: "the clock was held low".
   */
  measure(
    id: string,
    value: number,
    rule: string | undefined,
    what: string,
    time: Time,
    at: At | undefined,
  ): void {
    const of = known(id);
    const before = this.#measured.get(id);
    this.#measured.set(id, {
      id,
      unit: of.unit,
      least: Math.min(before?.least ?? value, value),
      most: Math.max(before?.most ?? value, value),
      count: (before?.count ?? 0) + 1,
    });
    if (rule === undefined || allows(of, value)) return;
    this.fail({
      rule,
      message: `${what} ${plain(value, 2)} ${of.unit}; right is ${formatRange(of)}`,
      time,
      at,
      measured: { value, unit: of.unit },
      limit: limitOf(of),
      ...(of.sources.length === 0 ? {} : { source: formatSources(of.sources) }),
    });
  }

  measureTime(
    id: string,
    value: Time,
    rule: string | undefined,
    what: string,
    time: Time,
    at: At | undefined,
  ): void {
    this.measure(id, value / unitOf(known(id)), rule, what, time, at);
  }
}

function limitOf({ min, max, unit }: Quantity): Limit {
  return {
    ...(min === undefined ? {} : { atLeast: min }),
    ...(max === undefined ? {} : { atMost: max }),
    unit,
  };
}

function keyOf(span: Span | undefined): string {
  return span === undefined ? "" : `${span.file} ${span.start} ${span.end}`;
}

/** How far beyond its limit, in the limit's unit. */
function distanceFrom(limit: Limit | undefined, measured: Measured | undefined): number {
  if (limit === undefined || measured === undefined) return 0;
  return Math.max(
    (limit.atLeast ?? measured.value) - measured.value,
    measured.value - (limit.atMost ?? measured.value),
  );
}
