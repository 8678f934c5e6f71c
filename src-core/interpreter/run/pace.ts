import type { MachineRequest } from "../machine.ts";
import type { Clock, Registers } from "../outcome.ts";
import { Halt } from "./halt.ts";
import type { Linker } from "./linker.ts";

/** Of cycles that are counted; fits a 32-bit number. */
const longestSlice = 1_000_000_000;

/** LDS and STS take two cycles; AVR Instruction Set Manual. */
const accessCycles = 2;

/** Steps after which a run looks whether it has to end. */
const slice = 100_000;

/**
 * How far a run may go on: steps up to their limit or, where there is a clock, cycles until somebody else has his turn.
 * Generated code counts down the first counter by itself and calls `spent` below zero.
 */
export class Pace {
  readonly #limits: MachineRequest["limits"];
  readonly #clock: Clock | undefined;
  readonly #cancelled: MachineRequest["cancelled"];
  readonly #linker: Linker;
  readonly #counters: Int32Array;
  #stepsLeft = 0;
  /** What the first counter was set to when cycles were last passed on. */
  #slice = 0;
  /** Cycles that the clock was told of. */
  #passed = 0;
  /** `cycles` when the watchdog was restarted for the last time. */
  #restarted = -1;

  constructor({ limits, clock, cancelled }: MachineRequest, linker: Linker, counters: Int32Array) {
    this.#limits = limits;
    this.#clock = clock;
    this.#cancelled = cancelled;
    this.#linker = linker;
    this.#counters = counters;
  }

  /** Cycles that went by and that the clock does not know of yet. */
  get untold(): number {
    return this.#slice - (this.#counters[0] ?? 0);
  }

  /** The code begins anew: no cycles have gone by. */
  reset(): void {
    this.#slice = 0;
    this.#counters[0] = 0;
    this.#passed = 0;
    this.#restarted = -1;
  }

  /** The machine is called from outside. */
  begin(): void {
    this.#stepsLeft = this.#limits.steps;
    // Cycles that the clock does not know of yet are not forgotten.
    if (this.#clock === undefined) this.#counters[0] = 0;
  }

  /** The first counter is below zero. Throws `Halt` where the run has to end. */
  spent(place: number): void {
    if (this.#clock !== undefined) {
      this.settle(place);
      return;
    }
    const at = this.#linker.places[place];
    if (this.#stepsLeft <= 0) throw new Halt("steps", `more than ${this.#limits.steps} steps`, at);
    if (this.#cancelled?.() === true) throw new Halt("cancelled", "cancelled", at);
    const next = Math.min(slice, this.#stepsLeft);
    this.#stepsLeft -= next;
    this.#counters[0] = next;
  }

  /** Tells the clock of the cycles that it does not know of yet. Throws `Halt` where it ends the run. */
  settle(place: number): void {
    const clock = this.#clock;
    if (clock === undefined) return;
    const used = this.untold;
    // Whoever is called from the clock counts for itself.
    this.#slice = 0;
    this.#counters[0] = 0;
    this.#passed += used;
    if (!clock.pass(used, this.#linker.places[place])) throw new Halt("ended", "the run is over", undefined);
    this.#ask(clock);
  }

  /** Cycles that the code has taken. */
  get cycles(): number {
    return this.#passed + this.#slice - (this.#counters[0] ?? 0);
  }

  /**
   * Behind a turn that began at `since` of `cycles` and is followed by turns just like it until something happens: those
   * that fit in whole, `most` at most, are over, and how many they are is told. A turn that ends as something happens may see it already, or `between` two bytes.
   */
  skip(since: number, most: number): number {
    const left = this.#counters[0] ?? 0;
    const turn = this.cycles - since;
    // With a watchdog that was restarted in the turn, the last one before what happens next is run: it restarts it, too.
    const kept = this.#restarted >= since ? turn + accessCycles : accessCycles + 1;
    const turns = turn > 0 ? Math.min(most, Math.floor((left - kept) / turn)) : 0;
    if (turns <= 0) return 0;
    this.#counters[0] = left - turns * turn;
    return turns;
  }

  /**
   * Between the accesses to two bytes of a variable. What is due before the second has its turn; true where an interrupt
   * may have come.
   */
  between(place: number): boolean {
    const left = (this.#counters[0] ?? 0) - accessCycles;
    if (this.#clock === undefined || left >= 0) return false;
    this.#counters[0] = left;
    this.settle(place);
    return true;
  }

  /** A variable was changed meanwhile. */
  torn(place: number): void {
    this.#clock?.torn?.(this.#linker.places[place]);
  }

  /** Lets cycles go by bit by bit, so that everything that happens in them has its moment. `place` is where it is asked for. */
  wait(cycles: number, place: number): void {
    if (this.#clock === undefined) return;
    let left = cycles;
    while (left > 0) {
      const step = Math.min(left, (this.#counters[0] ?? 0) + 1);
      left -= step;
      this.#counters[0] = (this.#counters[0] ?? 0) - step;
      if ((this.#counters[0] ?? 0) < 0) this.settle(place);
    }
  }

  /** Registers that are read and written at the moment that the code has come to. */
  settled(registers: Registers): Registers {
    const clock = this.#clock;
    if (clock === undefined) return registers;
    return {
      read: (address, bytes, at) => {
        this.settle(0);
        return registers.read(address, bytes, at);
      },
      write: (address, value, bytes, at) => {
        this.settle(this.#linker.placeNumber(at));
        registers.write(address, value, bytes, at);
        this.#ask(clock);
      },
    };
  }

  /**
   * An instruction that whoever keeps the time acts on, at the moment that the code has come to; then what woke it has its
   * turn. Throws `Halt` where it ends the run.
   */
  instructed(word: "wdr" | "sleep", place: number): void {
    const clock = this.#clock;
    if (clock?.instructed === undefined) return;
    this.settle(place);
    if (word === "wdr") this.#restarted = this.cycles;
    if (!clock.instructed(word, this.#linker.places[place])) {
      throw new Halt("ended", "the run is over", undefined);
    }
    this.settle(place);
  }

  #ask(clock: Clock): void {
    this.#slice = Math.min(clock.budget(), longestSlice);
    this.#counters[0] = this.#slice;
  }
}
