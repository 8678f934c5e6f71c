import type { ReportLayout } from "../model/layouts/layout.ts";
import type { At } from "../reader/typed/nodes.ts";
import type { Happening, ReceivedFrame, MouseReport as RecordedReport, SentFrame } from "./mice/record.ts";
import type { CodePlaces } from "./observing/code-places.ts";
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

/** What verdicts need to know of the mouse: of each record of `mice/record.ts`, what is asked for. */
export interface RunMouse {
  readonly sent: readonly MouseByte[];
  readonly received: readonly HostByte[];
  readonly reports: readonly MouseReport[];
  readonly happenings: readonly MouseHappening[];
}

/** A byte from the mouse, whole or cut off by the host. */
export type MouseByte = Pick<
  SentFrame,
  "start" | "end" | "byte" | "whole" | "resent" | "disturbed" | "report"
>;

/** A byte from the host, as the mouse took it. */
export type HostByte = Pick<ReceivedFrame, "start" | "end" | "byte" | "fault">;

export type MouseReport = Readonly<RecordedReport>;

/** `length` is that of a self-test. */
export type MouseHappening = Pick<Happening, "kind" | "time"> & { readonly length?: Time };

export interface RunPc extends PcRecord {
  readonly reports: readonly SerialReport[];
  readonly discarded: readonly Discarded[];
}

/** What the engine saw of the firmware that the wires do not show. */
export interface RunFirmware {
  readonly observations: readonly Observation[];
  /** Where the code was when the run ended; undefined where nobody knows. */
  readonly lastAt: At | undefined;
  /** Where the code was now and then, in order of time; left out where nobody knows. */
  readonly whereabouts?: readonly Whereabout[] | undefined;
  /** The same more often, for as long as a mouse may take to answer a byte of the host, or to test itself, and some more. */
  readonly afterCommands?: readonly Whereabout[] | undefined;
  /** Undefined where there is no source. */
  readonly places?: CodePlaces | undefined;
}

/** Where the code was at a moment. */
export interface Whereabout {
  readonly time: Time;
  readonly at: At | undefined;
}

export interface Observation {
  /**
   * `edge-missed`: a pulse of the clock was over before its interrupt was served, or nobody looked at it who looks at the
   * others. `sampled-wrong`: a bit of a byte from the mouse was read with the clock high, when its level may change.
   * `torn-access`: an interrupt came between the bytes of a variable that it changes.
   */
  readonly kind: "edge-missed" | "sampled-wrong" | "torn-access";
  /** The code was waiting until the UART could take a byte, or had sent one. */
  readonly waitsForUart?: boolean;
  readonly time: Time;
  readonly at: At | undefined;
}

/** What the author says the adapter does. */
export interface Wanted {
  readonly layout: ReportLayout;
  readonly baud: number;
  /** Counts of x and y out per count in; 1 where the author says nothing. */
  readonly scale: number;
}
