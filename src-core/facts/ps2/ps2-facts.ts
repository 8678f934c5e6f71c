import type { Span } from "../../finding.ts";
import type { FunctionSymbol, TypedExpression } from "../../reader/typed/nodes.ts";
import type { PinName } from "../pins/pin-change.ts";
import type { NotedConstant } from "../serial/noted-constants.ts";
import type { RegisterWrite } from "../walk/events.ts";
import type { Value } from "../walk/values.ts";
import type { LineTrace } from "./line-traces.ts";

/** What the firmware does as the host of the PS/2 port. */
export interface Ps2Facts {
  readonly clock: Ps2Pin | undefined;
  readonly data: Ps2Pin | undefined;
  readonly holds: readonly RequestHold[];
  readonly drivenHigh: readonly DrivenHigh[];
  readonly pullUps: PullUps;
  readonly senders: readonly Sender[];
  /** Nobody knows what else is sent: other functions of the library that sends are called, or not all code was walked. */
  readonly maySendMore: boolean;
  readonly sequences: readonly SendSequence[];
  readonly resets: readonly ResetWait[];
  readonly sentFrames: readonly SentFrame[];
  readonly wrongEdges: readonly WrongEdge[];
  readonly uncheckedParity: readonly UncheckedParity[];
  readonly unreadAnswers: readonly UnreadAnswer[];
  readonly collectedReports: readonly CollectedReport[];
  readonly replyWaits: readonly ReplyWait[];
  readonly endlessWaits: readonly EndlessWait[];
  /** Constants that a note calls a quantity of the PS/2 side. */
  readonly constants: readonly NotedConstant<string>[];
  /** What the code does not tell; each is said once. */
  readonly notKnown: readonly NotKnown[];
}

/** Something that had to be known and is not, in a whole sentence with what to do about it. */
export interface NotKnown {
  readonly span: Span | undefined;
  readonly message: string;
}

export type Line = "clock" | "data";

export interface Ps2Pin {
  readonly pin: PinName;
  /** For people: `PD2 (pin 2)`. */
  readonly text: string;
  /** Who says so: a note or edgewise.json; the host's request to send; the interrupt that reads the data line. */
  readonly by: "said" | "request" | "interrupt";
  /** Where that stands. */
  readonly span: Span;
}

/** One request to send: the clock held low, data pulled low, the clock let go. */
export interface RequestHold {
  /** Microseconds that are known to pass while the clock is low. */
  readonly us: number;
  readonly parts: readonly HoldPart[];
  /** Something in between takes a time that is not known. */
  readonly unknown: Span | undefined;
  /** Where the clock is pulled low, and where it is let go. */
  readonly low: Span;
  readonly release: Span;
}

/** A delay during a hold. */
export interface HoldPart {
  /** Microseconds of one time round; undefined where not known. */
  readonly us: number | undefined;
  /** How often it is done. */
  readonly times: number;
  /** Microseconds that an argument of 1 stands for; undefined where it is not proportional to time. */
  readonly unitUs: number | undefined;
  /** Numbers that the function around the delay was given. */
  readonly turnsFrom: readonly Value[];
  /** The argument; undefined for loops. */
  readonly expression: TypedExpression | undefined;
  readonly span: Span;
}

/** A byte that was followed bit by bit from the call of its sender to the data line. */
export interface SentFrame {
  readonly byte: number;
  /** The level that stands on the line as its parity bit. */
  readonly parity: 0 | 1;
  /** Where that is put there. */
  readonly put: Span;
  readonly sender: FunctionSymbol;
}

/** A place where data is taken or changed after the wrong edge of the clock. */
export type WrongEdge =
  /** The handler of the clock runs at this edge. */
  | {
      readonly kind: "handler";
      readonly edge: "rising" | "both";
      readonly span: Span;
      readonly set: EdgeSetting;
    }
  /** The handler takes the bits while the clock is high. */
  | { readonly kind: "high"; readonly span: Span }
  /** A loop does so after it waited for the clock to rise. */
  | { readonly kind: "polled"; readonly what: "read" | "changed"; readonly span: Span };

/** What says at which edge a handler runs. */
export type EdgeSetting =
  | { readonly kind: "none" }
  /** The third argument of `attachInterrupt`. */
  | { readonly kind: "mode" }
  /** Bits of a register: `mask` are those that decide, `falling` the ones among them for the falling edge. */
  | {
      readonly kind: "register";
      readonly write: RegisterWrite;
      readonly mask: number;
      readonly falling: number;
    };

/** Bits of bytes from the mouse are taken here, and nothing in the code can check their parity. */
export interface UncheckedParity {
  readonly span: Span;
}

/** A byte is sent here, and nothing in the project looks whether the mouse took it. */
export interface UnreadAnswer {
  readonly span: Span;
}

/** Bytes of reports are collected here, and nothing finds the first one again after one was lost. */
export interface CollectedReport {
  readonly span: Span;
}

/** How long the mouse is given to answer a byte. */
export interface ReplyWait {
  readonly sent: SentByte;
  /** With the delays in front of the wait. */
  readonly ms: number;
  readonly limit: WaitLimit;
}

/** A loop that nothing but an edge on the lines ends. */
export interface EndlessWait {
  /** The line whose level it waits for, or the name of what only the clock's handler writes. */
  readonly on: LineTrace;
  readonly span: Span;
  /** More such loops in the same function. */
  readonly others: readonly Span[];
}

/** A place where a line is driven high instead of being let go. */
export interface DrivenHigh {
  readonly line: Line;
  readonly span: Span;
  /** The name in the `#define` of the macro that has the statement, if one has. */
  readonly macro: Span | undefined;
  /** The level comes from a value that may be 0 or 1, such as the bit to send. */
  readonly sometimes: boolean;
  readonly way: DrivenHighWay;
}

export type DrivenHighWay =
  /** `digitalWrite(pin, HIGH)` on an output. */
  | { readonly kind: "digitalWrite"; readonly expressions: readonly TypedExpression[]; readonly call: Span }
  /** The pin was made an output by a write that sets this bit alone, in the same function. */
  | { readonly kind: "direction"; readonly target: Span; readonly operand: Span }
  | { readonly kind: "other" };

export interface PullUps {
  readonly said: "internal" | "external" | undefined;
  readonly saidSpan: Span | undefined;
  /** Whether the chip's pull-up is ever on while the pin is an input. */
  readonly clock: LinePullUp;
  readonly data: LinePullUp;
}

export interface LinePullUp {
  readonly enabled: boolean;
  /** Places that make the line an input, or let it go, without the pull-up. */
  readonly without: readonly Release[];
}

export interface Release {
  readonly span: Span;
  /** The mode of `pinMode`, where it is written there. */
  readonly mode: TypedExpression | undefined;
}

/** A function that sends a byte to the mouse. */
export interface Sender {
  /** As written at its calls. */
  readonly name: string;
  readonly function: FunctionSymbol | undefined;
  /** Index of the byte among its parameters. */
  readonly parameter: number;
  /** It does the request to send; or it is only called as if (common practice, no source). */
  readonly by: "what it does" | "its name";
}

/** Bytes that are sent one after the other along one path. */
export interface SendSequence {
  /** `program`: from reset on, nothing was sent before. */
  readonly from: "program" | "interrupt" | "alone";
  readonly bytes: readonly SentByte[];
}

export interface SentByte {
  /** 0 to 255; undefined where not known. */
  readonly byte: number | undefined;
  readonly span: Span;
  /** The expression that gives the byte. */
  readonly expression: TypedExpression | undefined;
  /** The call of the sender, or of what wraps it, in the outermost function that names the byte. */
  readonly call: Span;
  readonly sender: Sender;
  /** What was sent before is not known: the path begins here, or a loop begins that may have sent something. */
  readonly afterUnknown: boolean;
}

/** What follows a reset command (FF) before the next byte is sent. */
export interface ResetWait {
  readonly sent: SentByte;
  /** The longest that the firmware waits for AA, in ms; undefined where that is unlimited or not known. */
  readonly ms: number | undefined;
  /** The delay or time-out that decides, if there is one. */
  readonly decides: WaitLimit | undefined;
}

export interface WaitLimit {
  readonly kind: "delay" | "time-out";
  readonly ms: number;
  /** What the looks between counted delays may take on top of that. */
  readonly looksMs: number;
  /** Milliseconds that a value of 1 stands for. */
  readonly unitMs: number | undefined;
  readonly expression: TypedExpression | undefined;
  readonly span: Span;
}
