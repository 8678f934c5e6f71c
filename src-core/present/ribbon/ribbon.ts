import type { Time } from "../../bench/time/time.ts";
import type { Level } from "../../bench/wires/edge.ts";
import type { PathPoint } from "../../simulation-result.ts";
import type { LineColumn } from "../line-index.ts";

/**
 * The picture of a run before it is drawn: what stands on which lane from when to when, and what leads where. Plain data that
 * names no protocol, for whoever draws it; times are picoseconds since power-up.
 */
export interface Ribbon {
  /** One line: what was run with what. */
  readonly title: string;
  /** What is to be seen, in sentences, for those who do not see it. */
  readonly description: string;
  readonly passed: boolean;
  /** What the run was made with, label and text. */
  readonly setup: readonly LabelledText[];
  /** The whole run or the window asked for; then, where it helps, one moment of it at close range. */
  readonly panels: readonly Panel[];
  readonly paths: Paths;
  readonly figures: readonly LabelledText[];
  readonly faults: readonly FaultText[];
}

export type LabelledText = readonly [label: string, text: string];

export interface TimeWindow {
  readonly from: Time;
  readonly to: Time;
}

/** Three lanes over one time axis. */
export interface Panel extends TimeWindow {
  readonly title: string;
  readonly ticks: readonly Tick[];
  readonly lanes: readonly Lane[];
  readonly threads: readonly Thread[];
  readonly flags: readonly Flag[];
}

export interface Tick {
  readonly time: Time;
  readonly label: string;
}

export interface Lane {
  readonly id: "mouse" | "code" | "pc";
  readonly title: string;
  readonly rows: readonly Row[];
}

export type Row =
  | { readonly kind: "wire"; readonly label: string; readonly stretches: readonly Stretch[] }
  | { readonly kind: "marks"; readonly label: string; readonly marks: readonly Mark[] };

/** A time in which a wire keeps its level, or in which it changes too often to show. */
export interface Stretch extends TimeWindow {
  readonly level: Level | "busy";
  /** Changes in it, that at its start included. */
  readonly changes: number;
  /** The code that made the change at its start. */
  readonly place: Place | undefined;
}

/** A place in the source, as readers count. */
export interface Place extends LineColumn {
  readonly file: string;
}

/** `ps2.c:40:3`; empty for no place. */
export function placeText(place: Place | undefined): string {
  return place === undefined ? "" : `${place.file}:${place.line}:${place.column}`;
}

export type MarkKind = "from-host" | "from-mouse" | "report" | "byte" | "control" | "function" | "interrupt";

/** Something that lasts from one moment to another, or several that are too near each other to be told apart. */
export interface Mark extends TimeWindow {
  readonly kind: MarkKind;
  readonly isFault: boolean;
  /** What may be written on it, the longest first; whoever draws takes the first that fits. */
  readonly texts: readonly string[];
  /** The whole of it in one line. */
  readonly detail: string;
  /** How many things it stands for. */
  readonly count: number;
  /** Marks of one name have one tone, a small whole number from 0. */
  readonly tone: number;
  readonly place: Place | undefined;
}

/** From an incoming report, or several, to the outgoing report that carried it. */
export interface Thread {
  readonly incoming: TimeWindow;
  readonly outgoing: TimeWindow;
  readonly detail: string;
  readonly isSlowest: boolean;
}

/** Where faults were seen first, by their numbers. */
export interface Flag {
  readonly time: Time;
  readonly numbers: readonly number[];
}

/** The path sent and the path received, both from 0, 0; y upwards. */
export interface Paths {
  readonly sent: readonly PathPoint[];
  readonly received: readonly PathPoint[];
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** Something wrong in the run, with the number that its flag has. */
export interface FaultText {
  readonly number: number;
  readonly message: string;
  /** `[rule]`, when, what was found, what would be right. */
  readonly details: readonly string[];
  /** When it was seen first; undefined where nobody knows. */
  readonly time: Time | undefined;
  /** Undefined where no code is to blame. */
  readonly place: Place | undefined;
}
