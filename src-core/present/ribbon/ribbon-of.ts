import { second } from "../../bench/time/time.ts";
import { hasPassed, type SimulatedRun } from "../../simulation-result.ts";
import type { FileLines } from "../line-index.ts";
import { limitInWords, measuredInWords } from "../quantity.ts";
import { figureRows, milliseconds } from "../run-figures.ts";
import { closeUpOf } from "./close-up.ts";
import { type Canvas, panelOf, rowsOf } from "./panel.ts";
import {
  type FaultText,
  type LabelledText,
  type Panel,
  type Paths,
  type Place,
  placeText,
  type Ribbon,
  type TimeWindow,
} from "./ribbon.ts";
import { moment } from "./time-axis.ts";

/** What is said of a run beside its panels. */
export type RibbonWords = Omit<Ribbon, "panels">;

export function wordsOf(project: string, run: SimulatedRun, lines: FileLines): RibbonWords {
  const { stroke, mouse, pc } = run;
  const passed = hasPassed(run);
  const setup = setupOf(run);
  const figures = figureRows(run);
  const faults = faultsOf(run, lines);
  return {
    title: `${project}: stroke ${stroke.name}, mouse ${mouse.name}, PC ${pc.name}`,
    passed,
    setup,
    paths: pathsOf(run),
    figures,
    faults,
    description: [
      `The run ${passed ? "passed" : "failed"}.`,
      ...[...setup, ...figures].map(([label, text]) => sentence(`${label}: ${text}`)),
      ...faults.map(({ number, message, place, details }) =>
        sentence(
          `Fault ${number}: ${[message, placeText(place), ...details].filter((text) => text !== "").join("; ")}`,
        ),
      ),
    ].join(" "),
  };
}

/** The ribbon of a run: the whole of it with a close-up, or one window. The window lies within the run and is not empty. */
export function ribbonOf(
  project: string,
  run: SimulatedRun,
  lines: FileLines,
  canvas: Canvas,
  window: TimeWindow | undefined,
): Ribbon {
  return { ...wordsOf(project, run, lines), panels: panelsOf(run, lines, canvas, window) };
}

function sentence(text: string): string {
  return text.endsWith(".") ? text : `${text}.`;
}

function setupOf({ stroke, mouse, pc, layout, seed, ended }: SimulatedRun): readonly LabelledText[] {
  return [
    ["stroke", `${stroke.name}: ${stroke.title}`],
    ["mouse", `${mouse.name}: ${mouse.title}`],
    ["PC", `${pc.name}: ${pc.title}`],
    ["layout", layout],
    ["seed", `${seed}; ${(ended / second).toFixed(2)} s of virtual time`],
  ];
}

function panelsOf(
  run: SimulatedRun,
  lines: FileLines,
  canvas: Canvas,
  window: TimeWindow | undefined,
): readonly Panel[] {
  const rows = rowsOf(run, lines);
  const whole = `of ${(run.ended / second).toFixed(2)} s`;
  if (window !== undefined) {
    const title = `From ${moment(window.from)} to ${moment(window.to)} ${whole}`;
    return [panelOf(rows, title, window, canvas)];
  }
  const all = panelOf(rows, "The whole run", { from: 0, to: run.ended }, canvas);
  const closeUp = closeUpOf(run);
  return closeUp === undefined ? [all] : [all, panelOf(rows, closeUp.title, closeUp.window, canvas)];
}

function pathsOf({ sent, received }: SimulatedRun): Paths {
  const all = [...sent, ...received];
  const bound = (of: (numbers: readonly number[]) => number, axis: "x" | "y"): number =>
    of(all.map((point) => point[axis]));
  const least = (numbers: readonly number[]) => numbers.reduce((a, b) => Math.min(a, b), 0);
  const most = (numbers: readonly number[]) => numbers.reduce((a, b) => Math.max(a, b), 0);
  return {
    sent,
    received,
    left: bound(least, "x"),
    right: bound(most, "x"),
    bottom: bound(least, "y"),
    top: bound(most, "y"),
  };
}

/** Faults of the verdict by the numbers of their flags; behind them, why the code stopped. */
function faultsOf({ verdict, stopped }: SimulatedRun, lines: FileLines): readonly FaultText[] {
  const placeOf = (span: { readonly file: string; readonly start: number } | undefined): Place | undefined =>
    span && { file: span.file, ...lines.of(span.file).placeOf(span.start) };
  const faults = verdict.failures.map((failure, index): FaultText => {
    const { rule, message, time, times, measured, limit, span } = failure;
    const bound = limit === undefined ? undefined : limitInWords(limit);
    return {
      number: index + 1,
      message,
      time,
      place: placeOf(span),
      details: [
        `[${rule}]`,
        `first at ${milliseconds(time)}${times > 1 ? `, ${times} times` : ""}`,
        ...(measured === undefined ? [] : [`found ${measuredInWords(measured)}`]),
        ...(bound === undefined ? [] : [`limit ${bound}`]),
      ],
    };
  });
  if (stopped === undefined) return faults;
  const message = `the code stopped: ${stopped.message}`;
  return [
    ...faults,
    { number: faults.length + 1, message, time: undefined, place: placeOf(stopped.span), details: [] },
  ];
}
