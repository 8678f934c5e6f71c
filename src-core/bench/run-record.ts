import type { ReportLayout } from "../model/layouts/layout.ts";
import type { ReportValues } from "../model/layouts/values.ts";
import type { At } from "../reader/typed/nodes.ts";
import type { PcRecord } from "./pcs/pc-record.ts";
import type { Discarded, SerialReport } from "./pcs/reports/report-receiver.ts";
import type { Time } from "./time/time.ts";
import type { Edge } from "./wires/edge.ts";
import type { Conflict } from "./wires/open-collector.ts";

/** What was recorded of one run of a firmware on the bench: all that verdicts are made of. */
export interface Run {
  readonly ended: Time;
  /** Every wire's, in order of time. */
  readonly edges: readonly Edge[];
  /** What was done to the PS/2 wires that nobody may do. */
  readonly conflicts: readonly Conflict[];
  readonly mouse: RunMouse;
  readonly pc: RunPc;
  readonly firmware: RunFirmware;
  readonly wanted: Wanted;
}

/** What verdicts need to know of the mouse. */
export interface RunMouse {
  readonly sent: readonly MouseByte[];
  readonly received: readonly HostByte[];
  readonly reports: readonly MouseReport[];
  readonly happenings: readonly MouseHappening[];
}

/** A byte from the mouse, whole or cut off by the host. */
export interface MouseByte {
  /** The start bit came onto the data line. */
  readonly start: Time;
  readonly end: Time;
  /** As the mouse meant it. */
  readonly byte: number;
  readonly whole: boolean;
  readonly resent: boolean;
  /** A bit was turned over on the way. */
  readonly disturbed: boolean;
  /** Index of its report; undefined for a reply. */
  readonly report: number | undefined;
}

/** A byte from the host, as the mouse took it. */
export interface HostByte {
  readonly end: Time;
  readonly byte: number;
  readonly fault: "none" | "parity" | "stop" | "cut-off";
}

export interface MouseReport {
  readonly sampled: Time;
  readonly bytes: readonly number[];
  /** In the sense of PS/2: y upwards. */
  readonly values: ReportValues;
  /** Counts that did not fit and are gone. */
  readonly lost: { readonly x: number; readonly y: number; readonly wheel: number };
  /** The last byte was whole; undefined where it never was. */
  readonly sentAt: Time | undefined;
}

export interface MouseHappening {
  readonly kind: string;
  readonly time: Time;
  /** Of a self-test. */
  readonly length?: Time;
}

export interface RunPc extends PcRecord {
  readonly reports: readonly SerialReport[];
  readonly discarded: readonly Discarded[];
}

/** What the engine saw of the firmware that the wires do not show. */
export interface RunFirmware {
  readonly observations: readonly Observation[];
  /** Where the code was when the run ended; undefined where nobody knows. */
  readonly lastAt: At | undefined;
}

export interface Observation {
  /**
   * `edge-missed`: an edge of the clock found its interrupt still pending. `sampled-wrong`: the data pin was read while its
   * level may change. `torn-access`: an interrupt came between the bytes of a variable that it changes.
   */
  readonly kind: "edge-missed" | "sampled-wrong" | "torn-access";
  readonly time: Time;
  readonly at: At | undefined;
}

/** What the author says the adapter does. */
export interface Wanted {
  readonly layout: ReportLayout;
  readonly baud: number;
  /** Counts out per count in; 1 where the author says nothing. */
  readonly scale: number;
}
