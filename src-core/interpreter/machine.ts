import type { Program } from "../reader/program/program.ts";
import type { At, FunctionSymbol, Variable } from "../reader/typed/nodes.ts";
import type { Type } from "../reader/types/types.ts";
import type {
  Clock,
  InsteadFunction,
  Limits,
  Misstep,
  Outcome,
  OutsideFunction,
  Registers,
  TargetMemory,
  Written,
} from "./outcome.ts";

/** What a machine is made from. */
export interface MachineRequest {
  readonly program: Program;
  readonly limits: Limits;
  /** What is at register addresses; undefined for registers that are plain memory. */
  readonly registers: Registers | undefined;
  /** Library functions; tried after those that the interpreter knows itself. */
  readonly outside: OutsideFunction | undefined;
  /** What to run in place of functions that the firmware calls; undefined for nothing. */
  readonly instead: InsteadFunction | undefined;
  /** Counts cycles; undefined where time does not matter. With it `limits.steps` is not looked at. */
  readonly clock?: Clock | undefined;
  /** Variables that interrupt handlers use as well. Where cycles are counted, an interrupt may come between their bytes. */
  readonly shared?: readonly Variable[];
  /** Asked now and then; true ends the run. */
  readonly cancelled: (() => boolean) | undefined;
}

/** A program with its memory, ready to run. */
export interface Machine {
  readonly memory: TargetMemory;
  /** What undefined behaviour was met so far, each kind once a place. */
  readonly missteps: readonly Misstep[];
  /**
   * Lowers every function of the author's now, in the order of the program, and what they call: where literals and static
   * objects lie does not depend on what is called first.
   */
  prepare(): void;
  /** Initialises global objects, as the code before `main` does. Again for a reset. */
  reset(): Outcome;
  /** Runs one function; arguments as `OutsideBody` takes them. */
  call(symbol: FunctionSymbol, parameters: readonly (number | bigint)[]): Outcome;
  /** The value of a pointer to a function, which may be one that is run instead of others. */
  pointerTo(symbol: FunctionSymbol): number;
  /** Calls what a pointer to a function points to. */
  callPointer(pointer: number, parameters: readonly (number | bigint)[]): Outcome;
  /** Lets cycles go by, and interrupts with them, where they are counted. */
  wait(cycles: number): Outcome;
  /**
   * Gives what is to be called before each turn of a loop that the caller makes of calls: turns of a firmware that waits
   * are skipped as those of its own loops are.
   */
  turns(): () => void;
  /** Tells the clock of the cycles that it does not know of yet; after an interrupt handler was called. */
  settle(): void;
  /** Where a global object lies; undefined for one that the program does not have. */
  addressOf(variable: Variable): number | undefined;
  /**
   * Room for an object of this type beside the firmware's own, made as a global one without an initialiser is; the
   * outcome's value is its address. `at` is blamed where it cannot be made.
   */
  place(type: Type, at: At): Outcome;
  /** Remembers global objects, static locals and the heap; what comes back puts them as they were. */
  keep(): () => void;
  /** From now on writes to these bytes of global objects are listed by `takeWritten`. */
  watch(address: number, bytes: number): void;
  /** Writes to watched bytes since the last call, in order. */
  takeWritten(): readonly Written[];
  /** The expression that wrote this byte last; undefined for none since the reset. */
  writerOf(address: number): At | undefined;
}
