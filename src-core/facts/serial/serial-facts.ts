import type { Span } from "../../finding.ts";
import type { ReportLayout } from "../../model/layouts/layout.ts";
import type { LineFormat } from "../../model/line-formats.ts";
import type { At, TypedExpression } from "../../reader/typed/nodes.ts";
import type { PinName } from "../pins/pin-change.ts";
import type { Forwarding } from "./forwarding.ts";
import type { Identification } from "./identification.ts";

/** What the firmware does with the serial side, and what the PC wants of it. */
export interface SerialFacts {
  /** Set-ups of UARTs and of software serial ports, in the order of the code. */
  readonly setUps: readonly SetUp[];
  /** Those of the port that the mouse reports leave by; empty where it cannot be told. */
  readonly mouseSetUps: readonly SetUp[];
  readonly wantedBaud: WantedBaud | undefined;
  readonly wantedLine: WantedLine | undefined;
  /** Bytes sent bit by bit, timed by delays. */
  readonly bitBanged: readonly BitBangedByte[];
  /** Constants that a note calls a rate, a divisor or a bit time. */
  readonly constants: readonly SerialConstant[];
  /** What leaves by the port of the reports; undefined where it is not known which that is. */
  readonly sent: Sent | undefined;
  readonly identification: Identification | undefined;
  /** Where the pin that sends is left at space, the program once through. */
  readonly spaces: readonly SpaceAtRest[];
  /** Where the mouse's clock is not heard while a byte goes out. */
  readonly deaf: readonly DeafSending[];
  /** The control lines that were said, and whose pin is known. */
  readonly controlLines: readonly ControlLine[];
}

export interface Sent {
  /** Bytes that are known, sent one after the other. */
  readonly runs: readonly SentRun[];
  /** Bytes that are not known: where they are named. */
  readonly others: readonly SentByte[];
  /** Something that is not read here may send as well: a library, a call that was not followed. */
  readonly mayBeMore: boolean;
  /** The firmware is there from its start on, and not functions of it alone. */
  readonly hasProgram: boolean;
  /** The watchdog, or a jump, may start the chip anew. */
  readonly mayStartAnew: boolean;
  /** How the mouse is heard where what it says is sent on whenever it comes; undefined where it is not. */
  readonly forwards: Forwarding | undefined;
}

/** Interrupts are turned off here while a byte goes out bit by bit. */
export interface DeafSending {
  readonly span: Span;
  /** Microseconds of delays meanwhile. */
  readonly us: number;
}

/** A write that makes the pin an output at space, or takes it there, and what follows. */
export interface SpaceAtRest {
  readonly pin: PinName;
  readonly span: Span;
  /** Where its first token stands. */
  readonly at: At;
  /** Microseconds of delays that are sure to pass before the pin changes; undefined for all the time until a byte is sent. */
  readonly us: number | undefined;
  /** The core's function that does it, and what it is given; undefined for a register. */
  readonly call: readonly TypedExpression[] | undefined;
}

export interface SentByte {
  /** 0 to 255; undefined where not known. */
  readonly byte: number | undefined;
  readonly span: Span;
  /** The expression that gives the byte. */
  readonly expression: TypedExpression | undefined;
}

/** Bytes of which each is known. */
export interface SentRun {
  readonly bytes: readonly RunByte[];
  /** What was seen of a control line on the way; undefined where nothing was. */
  readonly asked: Asked | undefined;
  /** It may happen more than once: in a loop, or in an interrupt handler. */
  readonly again: boolean;
  /** Nothing that is not known is sent right before it. */
  readonly opened: boolean;
  /** Nothing else can follow at once. */
  readonly closed: boolean;
}

export interface RunByte extends SentByte {
  readonly byte: number;
  /** Delays since the byte before it, or since the control line was seen; each is sure to happen. */
  readonly waits: readonly Wait[];
}

export interface Asked {
  /** Undefined where the level that was seen is not known. */
  readonly state: "on" | "off" | undefined;
  readonly span: Span;
}

/** A delay by one place in the code. */
export interface Wait {
  /** Microseconds of all its calls, and of one. */
  readonly us: number;
  readonly each: number;
  readonly span: Span;
  readonly expression: TypedExpression | undefined;
  /** The function that waits. */
  readonly name: string;
}

export interface ControlLine {
  readonly line: "rts" | "dtr";
  readonly pin: PinName;
  /** For people: `PD4 (pin 4)`. */
  readonly text: string;
  /** Where it is said. */
  readonly span: Span;
  /** Whether some code looks at its level or has its interrupt; undefined where that cannot be told. */
  readonly looked: boolean | undefined;
}

export type PortName =
  | { readonly kind: "uart"; readonly uart: number }
  /** `pins`: receive and transmit, as board numbers, where known. */
  | {
      readonly kind: "software";
      readonly name: string;
      readonly pins: readonly [rx: number | undefined, tx: number | undefined];
      /** It turns every level over; undefined where that is not known. */
      readonly inverse: boolean | undefined;
    };

export interface SetUp {
  readonly port: PortName;
  readonly by: "registers" | "core" | "software serial";
  /** The divisor's or the rate's expression. */
  readonly span: Span;
  readonly expression: TypedExpression | undefined;
  /** The register that is assigned the divisor, or its low byte; undefined for other set-ups. */
  readonly target:
    | { readonly span: Span; readonly name: string; readonly whole: string | undefined }
    | undefined;
  readonly rate: Rate;
  /** The divisor is computed from `F_CPU`, which the code does not define. */
  readonly needsClock: boolean;
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
      /** What the code meant, where the register or a parameter on the way cut it. */
      readonly intended: number;
      /** Both bytes at once, each for itself, or the low one alone (the high one is 0 after reset). */
      readonly written: "whole" | "bytes" | "low byte";
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
  /** The register and the whole value that is assigned to it, for a set-up by registers. */
  readonly register: string | undefined;
  readonly assigned: number | undefined;
  /** The bit that says which of two registers at one address takes a byte (URSEL); undefined for none. */
  readonly select: Select | undefined;
}

export interface Select {
  readonly name: string;
  readonly mask: number;
  /** The register that takes what is written without the bit, as the format was. */
  readonly takenBy: string | undefined;
}

/** The rate that the PC listens at, and who says so. */
export interface WantedBaud {
  readonly baud: number;
  readonly by: "note" | "layout";
  readonly span: Span;
}

/** What a PC understands: one frame, or all that fit a layout. */
export type WantedLine =
  | { readonly kind: "format"; readonly format: LineFormat; readonly span: Span }
  | { readonly kind: "layout"; readonly layout: ReportLayout; readonly span: Span };

/** One byte that a function sends on a pin: a level, a delay, a level, a delay, ... */
export interface BitBangedByte {
  readonly pin: string;
  /** It is the pin that a note or edgewise.json names. */
  readonly said: boolean;
  /** The level of the start bit, and where it is set. */
  readonly start: { readonly level: 0 | 1; readonly span: Span };
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
