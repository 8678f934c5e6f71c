import type { Chip } from "../model/chips/chip.ts";
import type { At, FunctionSymbol } from "../reader/typed/nodes.ts";
import type { DataModel } from "../reader/types/types.ts";

/** How a run ended. */
export type Outcome =
  /** `value` is a number, or a bigint for 64-bit integers; undefined for `void` and for objects. */
  | { readonly kind: "returned"; readonly value: number | bigint | undefined }
  | { readonly kind: "stopped"; readonly stop: Stop };

/** Why a run ended before its time. */
export interface Stop {
  readonly reason: "cannot-run" | "steps" | "memory" | "recursion" | "cancelled" | "ended";
  /** For people: `cannot run: inline assembly "break"`, the place not included. */
  readonly message: string;
  /** Undefined where no place in the source is to blame. */
  readonly at: At | undefined;
}

/** Undefined behaviour that the run met. It went on as an AVR would. */
export interface Misstep {
  readonly kind:
    | "out-of-bounds"
    | "null-pointer"
    | "signed-overflow"
    | "division-by-zero"
    | "shift-amount"
    | "uninitialized";
  readonly message: string;
  readonly at: At;
}

/** What a run may use at most. */
export interface Limits {
  /** Steps: about one for each operation of the source. */
  readonly steps: number;
  /** Calls within calls. */
  readonly depth: number;
}

export const usualLimits: Limits = { steps: 50_000_000, depth: 400 };

/** Registers and whatever else is at addresses that are no memory. Values are unsigned, `bytes` 1, 2 or 4. */
export interface Registers {
  /** `at` is what is read; undefined where that is not in the source. */
  read(address: number, bytes: number, at: At | undefined): number;
  write(address: number, value: number, bytes: number, at: At): void;
}

/** Counts the cycles that code takes, and says when somebody else has his turn. */
export interface Clock {
  /** Cycles until `pass` has to be called, 0 for as soon as a statement ends. */
  budget(): number;
  /**
   * So many cycles went by, 0 or more; the code is at `at`. Interrupt handlers are called from here; they
   * count the response to the interrupt and their return themselves. False ends the run.
   */
  pass(cycles: number, at: At | undefined): boolean;
  /** The code executed `wdr` or `sleep`; cycles may go by. Without it both do nothing. False ends the run. */
  instructed?(word: "wdr" | "sleep", at: At | undefined): boolean;
  /** An interrupt handler changed a shared variable between two of its bytes, which the code at `at` reads or writes. */
  torn?(at: At | undefined): void;
  /**
   * Another number whenever something happened that the code may see, an interrupt handler included, and whenever the code read
   * or did something for which the same turn of a loop may not come to the same once more: read a counter, sent a byte.
   */
  happened(): number;
  /** No turn of a waiting loop is skipped, as those are that change nothing: slow, and the same in all else. */
  readonly runsEveryTurn?: boolean;
  /** Told of calls of the program's own functions, each: loops that call any are run turn by turn. Left out, calls cost nothing. */
  readonly calls?: CallWatcher;
}

/** `untold` are the cycles that went by since the last `pass`. */
export interface CallWatcher {
  entered(symbol: FunctionSymbol, untold: number): void;
  /** The function that was entered last is left, whatever way. */
  left(untold: number): void;
}

/** A function that the firmware declares and does not define: a library's. Pointers and integers come as numbers. */
export type OutsideFunction = (symbol: FunctionSymbol) => OutsideBody | undefined;

/**
 * Arguments as numbers (bigint for 64 bits); `self` first in methods, and before it, where the function returns
 * an object, the address at which to build that.
 */
export type OutsideBody = (
  parameters: readonly (number | bigint)[],
  memory: TargetMemory,
  surroundings: Surroundings,
) => number | bigint | undefined;

/** A function that is run in place of one of the firmware's; undefined leaves that as it is. */
export type InsteadFunction = (symbol: FunctionSymbol) => InsteadBody | undefined;

/** As an `OutsideBody`; `call` tells where the call stands. */
export type InsteadBody = (
  parameters: readonly (number | bigint)[],
  memory: TargetMemory,
  call: CallPlace,
) => number | bigint | undefined;

export interface CallPlace {
  /** Its last argument; undefined for none, and where a library function calls it. */
  readonly argument: At | undefined;
  /** Address of the object that the last argument reads; 0 where it is no object's value. */
  readonly readsFrom: number;
}

/** One byte written to memory that is watched. */
export interface Written {
  readonly address: number;
  /** What the byte became. */
  readonly value: number;
  /** The expression whose value was stored, or the compound assignment as a whole. */
  readonly at: At | undefined;
}

/** What else of the machine library functions use. */
export interface Surroundings {
  /** Calls the virtual function of this name, with as many parameters, that the object's dynamic type has. */
  callVirtual(
    self: number,
    name: string,
    parameters: readonly (number | bigint)[],
  ): number | bigint | undefined;
  /** Calls what a pointer to a function points to. */
  callPointer(pointer: number, parameters: readonly (number | bigint)[]): number | bigint | undefined;
  /** The function changed something that is neither memory nor a register nor in `kept`. */
  changed(): void;
  /** Stops the run where it is: `what` cannot be done as the target does it. */
  refuse(what: string): never;
  /** Where the global object of this name lies; undefined for one that the program does not have. */
  addressOf(name: string): number | undefined;
  /** Lets cycles go by, and interrupts with them, where they are counted. */
  wait(cycles: number): void;
  /** Lets everything happen up to the moment that the code has come to, where cycles are counted. */
  settle(): void;
  /** Where the library function is called; undefined where that is not in the source. */
  place(): At | undefined;
  /** Executes an instruction for which C has no words. */
  instruct(word: "wdr" | "sleep"): void;
  /** Undefined where it is not known. */
  readonly chip: Chip | undefined;
  /** Of the chip, in Hz; undefined where it is not known. */
  readonly clockHz: number | undefined;
  /** Sizes on the target. */
  readonly model: DataModel;
  /** What library functions remember from call to call, by a name of theirs; emptied by a reset. */
  readonly kept: Map<string, number>;
}

/** The target's memory by address, little-endian, as library functions read and write it. */
export interface TargetMemory {
  readByte(address: number): number;
  writeByte(address: number, value: number): void;
  /** Bytes on the heap; 0 where there is no room. */
  allocate(bytes: number): number;
  release(address: number): void;
  /** Bytes that were allocated at this address; 0 for none. */
  allocatedAt(address: number): number;
}
