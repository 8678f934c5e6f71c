import type { FunctionSymbol, TypedExpression, TypedStatement, Variable } from "../../reader/typed/nodes.ts";
import type { Effects } from "./effects.ts";
import type { Event, OutsideCall, RegisterRead, RegisterWrite } from "./events.ts";
import type { Linkage } from "./linkage.ts";
import { type Changes, Memory, type Sharing } from "./memory.ts";
import type { Place } from "./places.ts";
import type { RepeatableCall } from "./repeatable-calls.ts";
import { joinTraces, joinValues, unknown } from "./unknowns.ts";
import type { Register, Trace, Value } from "./values.ts";

/** What stands outside the program text: the chip's registers and the functions that act on them. */
export interface Hardware {
  /** The register at an address, or undefined where there is none that is known. */
  registerAt(address: number, bits: number): Register | undefined;
  /** The register of this name, for sources whose chip is not known. */
  registerNamed(name: string): Register | undefined;
  isLatch(register: Register): boolean;
  /** Called for a write to a register that the firmware makes itself; gives what else happens then. */
  written(write: RegisterWrite, machine: Machine): void;
  /** What a function of the sketch core gives; may write registers. Undefined where it is not known. */
  called(call: OutsideCall, machine: Machine): Value | undefined;
}

/** Where the function's paths that have come to a `return` (or `goto`) stand. */
export interface Frame {
  readonly function: FunctionSymbol;
  /** How many objects of its callers live. */
  readonly outerObjects: number;
  readonly self: Place | undefined;
  readonly mark: number;
  readonly returns: { readonly changes: Changes; readonly value: Value | undefined }[];
  /** The statement behind which the function is over. */
  readonly end: TypedStatement | undefined;
  /** Set where no path left the function before its end: what memory holds then is what it leaves. */
  onlyReturn: { readonly value: Value | undefined } | undefined;
  /** What decided which of the returns is taken. */
  traces: readonly Trace[];
  gotos: Map<string, Changes[]> | undefined;
}

/** The loop or `switch` that `break` and `continue` belong to. */
export interface Breakable {
  readonly mark: number;
  readonly breaks: Changes[];
  /** Undefined for a `switch`, through which `continue` goes on outwards. */
  readonly continues: Changes[] | undefined;
  /** How many objects outside of it live. */
  readonly outerObjects: number;
  readonly outer: Breakable | undefined;
}

/** A local variable at whose end something is called. */
interface LivingObject {
  readonly variable: Variable;
  readonly ending: FunctionSymbol;
}

/** Which state a walk starts from: `reset`, or `any` moment of a run that the program walk has shown. */
type Moment = "reset" | "any";

/** The state of a walk: memory, the path so far, and the bounds. */
export class Machine {
  readonly memory: Memory;
  readonly linkage: Linkage;
  readonly hardware: Hardware;
  /** Variables that the firmware writes after they got their first value. */
  readonly everWritten: Sharing;
  /** Calls of functions that are being walked, innermost last. */
  readonly active: FunctionSymbol[] = [];
  readonly reached = new Set<FunctionSymbol>();
  /** Those that live on the path now, innermost last. */
  readonly living: LivingObject[] = [];
  /** What loops that were met write, calls included. */
  readonly loopEffects = new Map<TypedStatement, Effects>();
  /** What the operands of `&&` gave last. */
  readonly operandsOfAnd = new Map<TypedExpression, Value>();
  moment: Moment = "reset";
  frame: Frame | undefined = undefined;
  breakable: Breakable | undefined = undefined;
  /** False once the path has come to its end. */
  alive = true;
  /** Steps that are left. */
  steps: number;
  cutShort = false;
  /** Calls that were walked, to be taken over where nothing they depend on has changed. */
  /** Number of events so far, those that were taken over included. */
  happened = 0;
  readonly repeats = new Map<FunctionSymbol, RepeatableCall[]>();
  #sink: Event[] = [];
  #muted = 0;
  #lastRead: RegisterRead | undefined = undefined;

  constructor(setting: {
    readonly linkage: Linkage;
    readonly hardware: Hardware;
    readonly sharing: Sharing;
    readonly everWritten: Sharing;
    readonly steps: number;
  }) {
    this.linkage = setting.linkage;
    this.hardware = setting.hardware;
    this.memory = new Memory(setting.sharing, setting.linkage.canonicalField);
    this.everWritten = setting.everWritten;
    this.steps = setting.steps;
  }

  /** How deep expressions, statements and calls are nested now. */
  nesting = 0;

  /** Counts a step; false once the bound is reached. */
  step(): boolean {
    if (this.steps > 0) {
      this.steps -= 1;
      return true;
    }
    this.cutShort = true;
    return false;
  }

  emit(event: Event): void {
    if (this.#muted > 0) return;
    this.#sink.push(event);
    this.happened += 1;
  }

  emitRead(event: RegisterRead): void {
    this.#lastRead = event;
    this.emit(event);
  }

  /** The value read last is masked: other bits of the register do not matter. */
  maskLastRead(register: Register, mask: number): void {
    const read = this.#lastRead;
    if (read?.register === register) read.mask = (read.mask & mask) >>> 0;
  }

  /** The events of `run`, kept out of the list so far. */
  capture(run: () => void): Event[] {
    const outer = this.#sink;
    const events: Event[] = [];
    this.#sink = events;
    run();
    this.#sink = outer;
    return events;
  }

  /** Puts events that were captured where the path is now. */
  release(events: readonly Event[]): void {
    if (this.#muted > 0) return;
    for (const event of events) this.#sink.push(event);
  }

  /** Runs `run` without events, as for constant initialisers. */
  quietly<Result>(run: () => Result): Result {
    this.#muted += 1;
    const result = run();
    this.#muted -= 1;
    return result;
  }

  /** Events are not kept now. */
  get isMuted(): boolean {
    return this.#muted > 0;
  }

  placeOf(variable: Variable): Place {
    return this.memory.placeOf(this.linkage.canonical(variable));
  }

  /** Goes on from the state that all of `outcomes` have in common; dead where there is none. */
  continueFrom(
    outcomes: readonly Changes[],
    why: readonly Trace[],
    heldValue: (place: Place) => Value,
  ): void {
    const [first, second] = outcomes;
    this.alive = first !== undefined;
    if (first === undefined || outcomes.every(({ size }) => size === 0)) return;
    if (outcomes.length === 1) {
      for (const [place, value] of first) this.memory.write(place, value);
      return;
    }
    if (outcomes.length === 2 && second !== undefined) {
      this.#joinTwo(first, second, why, heldValue);
      return;
    }
    const places = new Set<Place>();
    for (const outcome of outcomes) for (const place of outcome.keys()) places.add(place);
    for (const place of places) this.#join(place, outcomes, why, heldValue);
  }

  /** As most branches have two sides, these are joined without a list of what either wrote. */
  #joinTwo(one: Changes, other: Changes, why: readonly Trace[], heldValue: (place: Place) => Value): void {
    const join = (place: Place, a: Value | undefined, b: Value | undefined): void => {
      if (a === undefined && b === undefined) return;
      this.memory.write(place, joinValues(a ?? heldValue(place), b ?? heldValue(place), why));
    };
    for (const [place, value] of one) {
      join(place, value, other.has(place) ? other.get(place) : place.value);
    }
    for (const [place, value] of other) if (!one.has(place)) join(place, place.value, value);
  }

  #join(
    place: Place,
    outcomes: readonly Changes[],
    why: readonly Trace[],
    heldValue: (place: Place) => Value,
  ): void {
    let joined: Value | undefined;
    let wholes = 0;
    for (const outcome of outcomes) {
      const value = outcome.has(place) ? outcome.get(place) : place.value;
      if (value === undefined) wholes += 1;
    }
    if (wholes === outcomes.length) return;
    for (const outcome of outcomes) {
      const value = (outcome.has(place) ? outcome.get(place) : place.value) ?? heldValue(place);
      joined = joined === undefined ? value : joinValues(joined, value, why);
    }
    this.memory.write(place, joined ?? unknown(undefined));
  }

  /** Leaves the function by a statement, or behind its last one: this path ends here with `value`. */
  leaveFunction(value: Value | undefined, by: TypedStatement | undefined): void {
    const { frame } = this;
    this.alive = false;
    if (frame === undefined) return;
    if (frame.returns.length === 0 && (by === undefined || by === frame.end)) frame.onlyReturn = { value };
    else frame.returns.push({ changes: this.memory.changesSince(frame.mark), value });
  }

  /** Remembers that `traces` decided which return a path takes. */
  decided(traces: readonly Trace[]): void {
    if (this.frame !== undefined) this.frame.traces = joinTraces(this.frame.traces, traces);
  }
}
