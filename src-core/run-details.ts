import type { Time } from "./bench/time/time.ts";
import type { Level, Party, WireName } from "./bench/wires/edge.ts";
import type { Span } from "./finding.ts";
import type { ReportValues } from "./model/layouts/values.ts";

/**
 * All that a picture of a run shows: plain data. Times are picoseconds since power-up. `place` is an index into `places`,
 * undefined where no code is to blame or nobody knows.
 */
export interface RunDetails {
  readonly places: readonly Span[];
  /** Every wire's, in order of time. */
  readonly edges: readonly RecordedEdge[];
  /** Bytes on the PS/2 wires, in order of time. */
  readonly frames: readonly MouseFrame[];
  /** The mouse's reports, in the order in which it made them. */
  readonly incoming: readonly IncomingReport[];
  /** Bytes that the PC received, in order of time. */
  readonly serialBytes: readonly SerialByte[];
  /** Reports that the PC took, in order of time. */
  readonly outgoing: readonly OutgoingReport[];
  /** Which incoming report was brought by which outgoing one, by index. */
  readonly threads: readonly { readonly incoming: number; readonly outgoing: number }[];
  readonly code: CodeDetails;
}

export interface RecordedEdge {
  readonly time: Time;
  readonly wire: WireName;
  readonly level: Level;
  readonly by: Party;
  readonly place: number | undefined;
}

/** A byte between host and mouse, whole or cut off. */
export interface MouseFrame {
  /** Its start bit. */
  readonly from: Time;
  readonly to: Time;
  readonly sender: "mouse" | "host";
  /** As its sender meant it; as the mouse took it where the host sent it. */
  readonly byte: number;
  /** In words: "enable reporting", "acknowledge", "byte 2 of 3". */
  readonly meaning: string;
  /** What a mouse's byte belongs to; undefined for a reply. */
  readonly report: number | undefined;
  /** In words; undefined for a sound byte. */
  readonly fault: string | undefined;
}

export interface IncomingReport {
  /** The start bit of its first byte, or when the mouse read its counters where no byte of it was sent. */
  readonly from: Time;
  /** Its last byte was whole; undefined where it never was. */
  readonly to: Time | undefined;
  readonly bytes: readonly number[];
  /** In the sense of PS/2: y upwards. */
  readonly values: ReportValues;
}

export interface SerialByte {
  readonly from: Time;
  readonly to: Time;
  readonly byte: number;
  readonly fault: "framing" | "break" | undefined;
}

export interface OutgoingReport {
  readonly from: Time;
  readonly to: Time;
  readonly bytes: readonly number[];
  /** In the sense of the serial layout. */
  readonly values: ReportValues;
}

export interface CodeDetails {
  readonly spans: readonly CodeSpan[];
  /** Calls of one function are one span where the pauses between them are not longer. */
  readonly resolution: Time;
}

/** A function at work, or an interrupt. */
export interface CodeSpan {
  readonly name: string;
  readonly kind: "function" | "interrupt";
  /** How many functions called it, one by the other; what an interrupt calls is counted from that interrupt. */
  readonly depth: number;
  /** It is an interrupt or was called from one. */
  readonly interrupting: boolean;
  readonly from: Time;
  readonly to: Time;
  readonly calls: number;
  readonly place: number | undefined;
}
