import type { Span } from "../../finding.ts";
import type { LineFormat } from "../../model/line-formats.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";

/** What the firmware does with the serial side, and what the PC wants of it. */
export interface SerialFacts {
  /** Set-ups of UARTs and of software serial ports, in the order of the code. */
  readonly setUps: readonly SetUp[];
  /** The port that the mouse reports leave by; undefined where it cannot be told. */
  readonly mousePort: PortName | undefined;
  readonly wantedBaud: WantedBaud | undefined;
  readonly wantedFormats: WantedFormats | undefined;
  /** Bytes sent bit by bit, timed by delays. */
  readonly bitBanged: readonly BitBangedByte[];
  /** Constants that a note calls a rate, a divisor or a bit time. */
  readonly constants: readonly SerialConstant[];
}

export type PortName =
  | { readonly kind: "uart"; readonly uart: number }
  | { readonly kind: "software"; readonly name: string }
  /** A pin written by the program itself. */
  | { readonly kind: "pin"; readonly pin: string };

export interface SetUp {
  readonly port: PortName;
  readonly by: "registers" | "core" | "software serial";
  /** The divisor's or the rate's expression. */
  readonly span: Span;
  readonly expression: TypedExpression | undefined;
  readonly rate: Rate;
  readonly format: SetFormat;
  readonly transmits: boolean;
  readonly receives: boolean;
  /** Whether every byte that is sent is seen to have its top bit set. */
  readonly topBit: "set" | "not seen to be set" | "no bytes seen";
  /** It stands on one side of a condition that is not known. */
  readonly conditional: boolean;
}

export type Rate =
  | {
      readonly kind: "divisor";
      /** What the register then holds. */
      readonly held: number;
      /** What the code meant, where the register cut it. */
      readonly intended: number;
      /** Samples per bit; undefined where the speed bit is not known. */
      readonly samples: 8 | 16 | undefined;
      /** The rate that the divisor was computed from, where the code names it (`BAUD`). */
      readonly named: number | undefined;
    }
  | { readonly kind: "baud"; readonly baud: number }
  | { readonly kind: "unknown" };

export interface SetFormat {
  /** Undefined where its bits are not known. */
  readonly format: LineFormat | undefined;
  /** Where it is set; undefined where it is left as it is after reset or by default. */
  readonly expression: TypedExpression | undefined;
  readonly span: Span | undefined;
  /** The register, for a set-up by registers. */
  readonly register: string | undefined;
}

/** The rate that the PC listens at, and who says so. */
export interface WantedBaud {
  readonly baud: number;
  readonly by: "note" | "layout";
  readonly span: Span;
}

/** Formats in which the PC understands the bytes. */
export interface WantedFormats {
  readonly formats: readonly LineFormat[];
  readonly by: "note" | "layout";
  readonly span: Span;
  /** Id of the layout. */
  readonly layout: string | undefined;
}

/** One byte that a function sends on a pin: a level, a delay, a level, a delay, ... */
export interface BitBangedByte {
  readonly pin: string;
  /** It is the pin that a note or edgewise.json names. */
  readonly said: boolean;
  /** In order: start bit, data bits, stop bit where it is timed. */
  readonly bits: readonly TimedBit[];
}

export interface TimedBit {
  readonly part: "start" | "data" | "stop";
  readonly us: number;
  /** The delay's argument. */
  readonly span: Span;
  readonly expression: TypedExpression | undefined;
}

export interface SerialConstant {
  readonly quantity: "serial.baud" | "serial.divisor" | "serial.bit-time";
  readonly name: string;
  readonly value: number;
  /** Its value in the source. */
  readonly span: Span;
  readonly note: Span;
}
