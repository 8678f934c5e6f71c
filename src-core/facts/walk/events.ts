import type { At, FunctionSymbol, TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import type { PinChange } from "../pins/pin-change.ts";
import type { Linkage } from "./linkage.ts";
import type { Bits, Register, Trace, Value } from "./values.ts";

/**
 * What the firmware does, in order. Calls, branches and loops hold the events inside them, so that a reader
 * can follow one path (`follow.ts`) or just go through all in order (`in-order.ts`). The way to an event is the
 * calls around it: a call that does what an earlier one did holds the same events as that.
 */
export type Event =
  | CallEvent
  | BranchEvent
  | LoopEvent
  | RegisterWrite
  | RegisterRead
  | OutsideCall
  | TimeTest
  | PinEvent
  | LeaveEvent
  | LabelEvent
  | AssemblyEvent
  | NotFollowed;

interface Happened {
  /** The expression or statement that does it. */
  readonly at: At;
}

/** A call of a function whose body is in the project. */
export interface CallEvent extends Happened {
  readonly kind: "call";
  readonly function: FunctionSymbol;
  readonly arguments: readonly Value[];
  /** As written; fewer than `arguments` never, empty for calls by the hardware. */
  readonly expressions: readonly TypedExpression[];
  /** The object a member function is called on. */
  readonly object: Value | undefined;
  readonly events: readonly Event[];
  readonly result: Value | undefined;
}

/** A condition that is not known: all sides were walked. One side may be empty. */
export interface BranchEvent extends Happened {
  readonly kind: "branch";
  /** Undefined for the cases of a `switch`, whose `selector` it is. */
  readonly condition: Value | undefined;
  readonly selector: Value | undefined;
  /** `if` and `?:`: then, otherwise. `&&`, `||`: the right side, nothing. `switch`: by case in order. */
  readonly sides: readonly (readonly Event[])[];
}

export interface LoopEvent extends Happened {
  readonly kind: "loop";
  /**
   * `counted`: a number of turns known beforehand. `endless`: its condition is always true. `waiting`: it does
   * nothing but look at something that changes by itself (pin, register, time, shared variable). `unknown`: else.
   */
  readonly form: "counted" | "endless" | "waiting" | "unknown";
  readonly statement: TypedStatement;
  /** Number of turns for `counted`, where known. */
  readonly turns: number | undefined;
  /** A counter ends it after this many turns at the latest. */
  readonly atMost: number | undefined;
  /** What its condition, and the conditions under which its body leaves it, depend on. */
  readonly waitsFor: readonly Trace[];
  /** Its condition as last evaluated; undefined where it has none. */
  readonly condition: Value | undefined;
  /** All of these have to hold for another turn: the condition, or the parts that `&&` joins, as far as evaluated. */
  readonly terms: readonly Value[];
  /** The body can be left by `break`, `return` or `goto`. */
  readonly leaves: boolean;
  /** It does nothing at all but count: a delay whose length depends on the compiler. */
  readonly idle: boolean;
  /** The body may not run at all. */
  readonly mayBeSkipped: boolean;
  /**
   * The turns walked, condition and step included. Where there are fewer than `turns`, the last one stands
   * for the rest; a loop that is not `counted` has one, walked with what it changes made unknown.
   */
  readonly passes: readonly (readonly Event[])[];
}

export interface RegisterWrite extends Happened {
  readonly kind: "register-write";
  readonly register: Register;
  /** The value written, or the other operand of `|=`, `&=`, `^=`. */
  readonly value: Value;
  readonly operator: "=" | "|=" | "&=" | "^=" | "other";
  /** Bits that this write makes 1, makes 0, turns over, leaves as they were. The rest is unknown. */
  readonly ones: number;
  readonly zeros: number;
  readonly flipped: number;
  readonly kept: number;
  readonly before: Bits;
  readonly after: Bits;
}

export interface RegisterRead extends Happened {
  readonly kind: "register-read";
  readonly register: Register;
  /** The bits that are looked at, where a mask follows at once. */
  mask: number;
}

/** A call of a function whose body is not in the project: of the sketch core, of a library, or unknown. */
export interface OutsideCall extends Happened {
  readonly kind: "outside-call";
  /** `delay`, `_delay_us`, `Serial.begin`: the object's name and the function's. */
  readonly name: string;
  /** Undefined where the name is declared nowhere. */
  readonly function: FunctionSymbol | undefined;
  /** `core`: it comes from a stand-in header, so its meaning is known. */
  readonly origin: "core" | "declared" | "undeclared";
  readonly object: Value | undefined;
  readonly arguments: readonly Value[];
  readonly expressions: readonly TypedExpression[];
  /** The bytes behind the first argument, where it points to some (`contents.ts`). */
  readonly contents: readonly Value[] | undefined;
}

/** Elapsed time is compared: `millis() - since > limit`, or a moment with another. */
interface TimeTest extends Happened {
  readonly kind: "time-test";
  /** The side that depends on the time. */
  readonly elapsed: Value;
  readonly limit: Value;
}

export interface PinEvent extends Happened {
  readonly kind: "pin";
  readonly change: PinChange;
}

/** The path ends here: the function, the turn or the loop is left. */
interface LeaveEvent extends Happened {
  readonly kind: "leave";
  readonly how: "return" | "break" | "continue" | "goto";
  readonly value: Value | undefined;
  /** Where a `goto` leads. */
  readonly label: string | undefined;
}

/** Paths that jumped forward to this label go on here. */
interface LabelEvent extends Happened {
  readonly kind: "label";
  readonly name: string;
}

interface AssemblyEvent extends Happened {
  readonly kind: "assembly";
  readonly text: string;
}

/** Something that the walk does not go into; what it may do is unknown. */
export interface NotFollowed extends Happened {
  readonly kind: "not-followed";
  readonly why:
    | "recursion"
    | "too deep"
    | "too long"
    | "called through an unknown pointer"
    | "not understood";
}

/** What starts by itself: the program, an interrupt handler, or a function nobody calls. */
export interface Entry {
  readonly kind: "program" | "interrupt" | "alone";
  readonly function: FunctionSymbol;
  /** The vector of `ISR(...)`; undefined for handlers given to `attachInterrupt`. */
  readonly vector: string | undefined;
  /** The `attachInterrupt` call that names it. */
  readonly attachedBy: OutsideCall | undefined;
}

export interface EntryWalk {
  readonly entry: Entry;
  readonly events: readonly Event[];
}

/** An event and the function in whose body it stands. */
export interface PlacedEvent {
  readonly event: Event;
  readonly symbol: FunctionSymbol;
}

/** The whole walk. `setup` and `loop` of a sketch are one program: `loop` is an endless loop after `setup`. */
export interface Walk {
  readonly entries: readonly EntryWalk[];
  /** All events, each once (`each-event.ts`). */
  readonly placed: readonly PlacedEvent[];
  /** Set where the bound on steps was reached: later code was not walked. */
  readonly cutShort: boolean;
  /** Which declarations mean the same. */
  readonly linkage: Linkage;
}
