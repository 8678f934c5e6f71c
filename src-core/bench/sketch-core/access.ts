import type { Surroundings } from "../../interpreter/outcome.ts";
import type { At } from "../../reader/typed/nodes.ts";
import type { FirmwareChip } from "../engines/firmware-chip.ts";

/** How the core's functions and handlers reach the chip, at the moment to which the code has come. */
export interface Access {
  wait(cycles: number): void;
  /** Waits turns of so many cycles until something may have happened, `most` at most; how many they were, 1 or more. */
  waitTurns(cycles: number, most: number): number;
  /** `mask`: the bits that are looked at, all where it is left out. */
  read(address: number, mask?: number): number;
  write(address: number, value: number): void;
  /** Clears some bits of a register and sets others, with nothing in between. */
  change(address: number, clear: number, set: number): void;
  /** The code on whose behalf this is done. */
  readonly place: At | undefined;
  /** What follows is done on behalf of other code, as when a byte leaves that was written long ago. */
  actFor(place: At | undefined): void;
}

/** For a function that the firmware calls: interrupts come in while it waits. */
export class CallAccess implements Access {
  readonly #chip: FirmwareChip;
  readonly #surroundings: Surroundings;
  place: At | undefined;

  /** The code has come to the call. */
  constructor(chip: FirmwareChip, surroundings: Surroundings) {
    this.#chip = chip;
    this.#surroundings = surroundings;
    this.place = surroundings.place();
    if (this.place !== undefined) chip.place = this.place;
  }

  actFor(place: At | undefined): void {
    this.place = place;
  }

  wait(cycles: number): void {
    this.#surroundings.wait(cycles);
  }

  waitTurns(cycles: number, most: number): number {
    this.#surroundings.settle();
    const turns = Math.max(1, Math.min(most, Math.floor((this.#chip.due - this.#chip.cycles) / cycles)));
    const finite = Number.isFinite(turns) ? turns : 1;
    this.wait(finite * cycles);
    this.#surroundings.settle();
    return finite;
  }

  read(address: number, mask?: number): number {
    this.#surroundings.settle();
    return this.#chip.read(address, mask === undefined ? undefined : { mask, at: this.place });
  }

  write(address: number, value: number): void {
    this.#surroundings.settle();
    this.#put(address, value);
  }

  change(address: number, clear: number, set: number): void {
    this.#surroundings.settle();
    this.#put(address, (this.#chip.read(address, undefined) & ~clear) | set);
  }

  #put(address: number, value: number): void {
    this.#chip.place = this.place;
    this.#chip.write(address, value & 0xff);
    // What it set off may be due now.
    this.#surroundings.settle();
  }
}

/** For an interrupt handler of the core: nothing comes in between. */
export class HandlerAccess implements Access {
  readonly #chip: FirmwareChip;

  constructor(chip: FirmwareChip) {
    this.#chip = chip;
  }

  get place(): At | undefined {
    return this.#chip.place;
  }

  /** Until the handler ends. */
  actFor(place: At | undefined): void {
    if (place !== undefined) this.#chip.place = place;
  }

  wait(cycles: number): void {
    this.#chip.pass(cycles);
    if (this.#chip.cycles >= this.#chip.due) this.#chip.catchUp();
  }

  waitTurns(cycles: number): number {
    this.wait(cycles);
    return 1;
  }

  read(address: number): number {
    return this.#chip.read(address, undefined);
  }

  write(address: number, value: number): void {
    this.#chip.write(address, value & 0xff);
  }

  change(address: number, clear: number, set: number): void {
    this.write(address, (this.read(address) & ~clear) | set);
  }
}
