import type { SimulatedRun } from "../../simulation-result.ts";
import type { FileLines } from "../line-index.ts";
import { codeRows } from "./code-lane.ts";
import { condensed } from "./condense.ts";
import { frameMarks, incomingMarks } from "./mouse-lane.ts";
import { byteMarks, controlMarks, outgoingMarks } from "./pc-lane.ts";
import type { Flag, Lane, Mark, Panel, Place, Row, TimeWindow } from "./ribbon.ts";
import { threadsIn } from "./threads.ts";
import { ticksOf } from "./time-axis.ts";
import { wireRow } from "./wire-row.ts";

/** How wide a panel is drawn, which says what can be told apart in it. */
export interface Canvas {
  /** Steps of the time axis that can be told apart. */
  readonly columns: number;
  /** Columns between two labels of the axis. */
  readonly perTick: number;
}

/** Lanes, threads and flags of one window of a run. */
export function panelOf(
  run: SimulatedRun,
  title: string,
  window: TimeWindow,
  { columns, perTick }: Canvas,
  lines: FileLines,
): Panel {
  const { details } = run;
  const finest = (window.to - window.from) / columns;
  const placeOf = placesOf(run, lines);
  const wire = (name: "clock" | "data" | "rxd") => wireRow(name, details.edges, window, finest, placeOf);
  const marks = (label: string, all: readonly Mark[]): Row => ({
    kind: "marks",
    label,
    marks: condensed(all, window, finest),
  });
  const lanes: readonly Lane[] = [
    {
      id: "mouse",
      title: "mouse",
      rows: [
        wire("clock"),
        wire("data"),
        marks("to the mouse", frameMarks(details, "host")),
        marks("from the mouse", frameMarks(details, "mouse")),
        marks("reports", incomingMarks(details)),
      ],
    },
    {
      id: "code",
      title: "code",
      rows: codeRows(details, placeOf).map(({ label, marks: all }) => marks(label, all)),
    },
    {
      id: "pc",
      title: "PC",
      rows: [
        marks("reports", outgoingMarks(run)),
        marks("bytes", byteMarks(details)),
        wire("rxd"),
        marks("RTS", controlMarks("rts", details, run.ended)),
        marks("DTR", controlMarks("dtr", details, run.ended)),
      ],
    },
  ];
  return {
    title,
    ...window,
    ticks: ticksOf(window, columns / perTick),
    lanes,
    threads: threadsIn(run, window, finest),
    flags: flagsIn(run, window, perTick * finest),
  };
}

function placesOf(
  { details }: SimulatedRun,
  lines: FileLines,
): (place: number | undefined) => Place | undefined {
  return (place) => {
    const span = place === undefined ? undefined : details.places[place];
    return span && { file: span.file, ...lines.of(span.file).placeOf(span.start) };
  };
}

/** Faults that are nearer than `apart` share a flag. */
function flagsIn({ verdict }: SimulatedRun, { from, to }: TimeWindow, apart: number): readonly Flag[] {
  const flags: Flag[] = [];
  for (const [index, { time }] of verdict.failures.entries()) {
    if (time < from || time > to) continue;
    const last = flags.at(-1);
    if (last !== undefined && time - last.time < apart / 3)
      flags[flags.length - 1] = { ...last, numbers: [...last.numbers, index + 1] };
    else flags.push({ time, numbers: [index + 1] });
  }
  return flags;
}
