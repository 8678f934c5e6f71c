import type { Time } from "../../bench/time/time.ts";
import type { CodeSpan, RunDetails } from "../../run-details.ts";
import { markOf } from "./mark-of.ts";
import type { Mark, Place } from "./ribbon.ts";
import { duration, moment } from "./time-axis.ts";

/** Deeper calls are told by those around them. */
const deepest = 4;
const tones = 6;

export interface CodeRow {
  readonly label: string;
  readonly marks: readonly Mark[];
}

/** What interrupted the code, then the code itself, by how deep its calls are; `main` around all of it takes no row. */
export function codeRows(
  { code }: RunDetails,
  placeOf: (place: number | undefined) => Place | undefined,
): readonly CodeRow[] {
  const toneOf = tonesOf(code.spans);
  const row = (label: string, spans: readonly CodeSpan[]): readonly CodeRow[] =>
    spans.length === 0 ? [] : [{ label, marks: marksOf(spans, toneOf, placeOf) }];
  const main = code.spans.filter(({ interrupting }) => !interrupting);
  const outermost = main.filter(({ depth }) => depth === 0);
  const top = outermost.every(({ name }) => name === "main") && main.length > outermost.length ? 1 : 0;
  return [
    ...row(
      "interrupts",
      code.spans.filter(({ kind }) => kind === "interrupt"),
    ),
    ...row(
      "their calls",
      code.spans.filter(
        ({ interrupting, kind, depth }) => interrupting && kind === "function" && depth === 1,
      ),
    ),
    ...Array.from({ length: deepest }, (_, index) =>
      row(
        index === 0 ? "functions" : `depth ${index}`,
        main.filter(({ depth }) => depth === top + index),
      ),
    ).flat(),
  ];
}

/** One mark for each stretch in which the same functions run: one alone, or several by turns in a loop. */
function marksOf(
  spans: readonly CodeSpan[],
  toneOf: ReadonlyMap<string, number>,
  placeOf: (place: number | undefined) => Place | undefined,
): readonly Mark[] {
  const marks: Mark[] = [];
  let running: readonly CodeSpan[] = [];
  let since: Time = 0;
  const upTo = (time: Time): void => {
    const [only, other] = running;
    if (time > since && only !== undefined) {
      marks.push(
        other === undefined ? spanMark(only, since, time, toneOf, placeOf) : turnsMark(running, since, time),
      );
    }
    since = time;
  };
  const sorted = spans.toSorted((a, b) => a.from - b.from);
  const endBefore = (time: Time): void => {
    for (const { to } of running.filter((span) => span.to <= time).toSorted((a, b) => a.to - b.to)) {
      upTo(to);
      running = running.filter((span) => span.to > to);
    }
  };
  for (const span of sorted) {
    endBefore(span.from);
    upTo(span.from);
    running = [...running, span];
  }
  endBefore(Number.POSITIVE_INFINITY);
  return marks;
}

function spanMark(
  { name, kind, calls, place }: CodeSpan,
  from: Time,
  to: Time,
  toneOf: ReadonlyMap<string, number>,
  placeOf: (place: number | undefined) => Place | undefined,
): Mark {
  const often = calls === 1 ? "" : `, ${calls} calls`;
  return markOf(kind, from, to, {
    texts: [name, name.replace(/^.*::/, "")],
    detail: `${name} for ${duration(to - from)}${often} (${moment(from)})`,
    tone: toneOf.get(name) ?? 0,
    place: placeOf(place),
  });
}

function turnsMark(spans: readonly CodeSpan[], from: Time, to: Time): Mark {
  const names = [...new Set(spans.map(({ name }) => name))].sort();
  const [kind] = spans.map((span) => span.kind);
  return markOf(kind ?? "function", from, to, {
    texts: [
      names.join(", "),
      `${names.slice(0, 2).join(", ")}, ...`,
      `${names[0]}, ...`,
      `${names.length} by turns`,
    ],
    detail: `${names.join(", ")} by turns for ${duration(to - from)} (${moment(from)})`,
    tone: turns,
    count: names.length,
  });
}

/** The tone of several functions. */
const turns = tones;

/** By name, so that a function has its tone in every panel. */
function tonesOf(spans: readonly CodeSpan[]): ReadonlyMap<string, number> {
  const names = [...new Set(spans.map(({ name }) => name))].sort();
  return new Map(names.map((name, index) => [name, index % tones]));
}
