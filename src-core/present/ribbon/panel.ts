import type { WireName } from "../../bench/wires/edge.ts";
import type { RecordedEdge } from "../../run-details.ts";
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

/** All that is on the lanes of a run, before a window of it is laid out. It is the same for every window. */
export interface RunRows {
  readonly run: SimulatedRun;
  readonly lanes: readonly {
    readonly id: Lane["id"];
    readonly title: string;
    readonly rows: readonly WholeRow[];
  }[];
  readonly placeOf: PlaceOf;
}

type PlaceOf = (place: number | undefined) => Place | undefined;

type WholeRow =
  | { readonly kind: "wire"; readonly label: WireName; readonly edges: readonly RecordedEdge[] }
  | { readonly kind: "marks"; readonly label: string; readonly marks: readonly Mark[] };

export function rowsOf(run: SimulatedRun, lines: FileLines): RunRows {
  const { details } = run;
  const placeOf = placesOf(run, lines);
  const wire = (label: WireName): WholeRow => ({
    kind: "wire",
    label,
    edges: details.edges.filter((edge) => edge.wire === label),
  });
  const marks = (label: string, all: readonly Mark[]): WholeRow => ({
    kind: "marks",
    label,
    marks: all.toSorted((a, b) => a.from - b.from),
  });
  return {
    run,
    placeOf,
    lanes: [
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
          // A PC seldom says anything.
          ...(details.edges.some((edge) => edge.wire === "txd") ? [wire("txd")] : []),
          marks("RTS", controlMarks("rts", details, run.ended)),
          marks("DTR", controlMarks("dtr", details, run.ended)),
        ],
      },
    ],
  };
}

/** Lanes, threads and flags of one window of a run. */
export function panelOf(
  { run, lanes, placeOf }: RunRows,
  title: string,
  window: TimeWindow,
  { columns, perTick }: Canvas,
): Panel {
  const finest = (window.to - window.from) / columns;
  const laidOut = (row: WholeRow): Row =>
    row.kind === "wire"
      ? wireRow(row.label, row.edges, window, finest, placeOf)
      : { kind: "marks", label: row.label, marks: condensed(row.marks, window, finest) };
  return {
    title,
    ...window,
    ticks: ticksOf(window, columns / perTick),
    lanes: lanes.map((lane) => ({ ...lane, rows: lane.rows.map(laidOut) })),
    threads: threadsIn(run, window, finest),
    flags: flagsIn(run, window, perTick * finest),
  };
}

function placesOf({ details }: SimulatedRun, lines: FileLines): PlaceOf {
  const known: (Place | undefined)[] = [];
  return (place) => {
    const span = place === undefined ? undefined : details.places[place];
    if (place === undefined || span === undefined) return undefined;
    known[place] ??= { file: span.file, ...lines.of(span.file).placeOf(span.start) };
    return known[place];
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
