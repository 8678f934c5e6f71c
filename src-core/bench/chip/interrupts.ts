import type { CPU } from "avr8js";
import type { Vector } from "../../model/chips/chip.ts";

/** A bit of a register in data space. */
export interface Bit {
  readonly address: number;
  readonly mask: number;
}

export interface InterruptSource {
  readonly vector: Vector;
  readonly flag: Bit;
  readonly enable: Bit;
  /** `taking`: entering the handler clears the flag; `condition`: it stays until what it tells of has gone. */
  readonly clearedBy: "taking" | "condition";
  /** Whether a 1 written to the flag clears it and nothing else is in its register. */
  readonly plainFlag: boolean;
  /** Whether nothing but such bits is in the register of the enable bit. */
  readonly plainEnable: boolean;
  /** The flag is about to be cleared, whoever does it. */
  readonly onClearing?: () => void;
  /** The flag was cleared. */
  readonly onCleared?: () => void;
  /** The handler is being entered. */
  readonly onTaken?: () => void;
}

/** One reason for which the chip may enter a handler. */
export class Interrupt {
  readonly source: InterruptSource;
  /** A level that asks for as long as it lasts, with no flag. */
  held = false;
  readonly #all: Interrupts;

  constructor(source: InterruptSource, all: Interrupts) {
    this.source = source;
    this.#all = all;
  }

  get isFlagged(): boolean {
    const { address, mask } = this.source.flag;
    return ((this.#all.cpu.data[address] ?? 0) & mask) !== 0;
  }

  get isEnabled(): boolean {
    const { address, mask } = this.source.enable;
    return ((this.#all.cpu.data[address] ?? 0) & mask) !== 0;
  }

  raise(): void {
    const { address, mask } = this.source.flag;
    this.#all.cpu.data[address] = (this.#all.cpu.data[address] ?? 0) | mask;
    this.#all.refresh(this);
  }

  clear(): void {
    const { flag, onClearing, onCleared } = this.source;
    onClearing?.();
    this.#all.cpu.data[flag.address] = (this.#all.cpu.data[flag.address] ?? 0) & ~flag.mask;
    this.#all.refresh(this);
    onCleared?.();
  }

  /** Looks at its bits again, after somebody wrote them. */
  refresh(): void {
    this.#all.refresh(this);
  }
}

const NONE = -1;

/**
 * Which handler the chip would enter next: the lowest vector whose flag and enable bit are both 1. The global flag in
 * SREG is looked at by whoever runs the code.
 */
export class Interrupts {
  readonly cpu: CPU;
  /** See `ChipCore`. */
  readonly #isSettable: Uint8Array;
  readonly #byVector = new Map<number, Interrupt>();
  readonly #pending = new Set<number>();
  #next = NONE;

  constructor(cpu: CPU, isSettable: Uint8Array) {
    this.cpu = cpu;
    this.#isSettable = isSettable;
  }

  add(source: InterruptSource): Interrupt {
    const interrupt = new Interrupt(source, this);
    this.#byVector.set(source.vector.number, interrupt);
    if (source.plainFlag) this.#hookFlags(source.flag.address);
    if (source.plainEnable) this.#hookEnables(source.enable.address);
    return interrupt;
  }

  /** Whether `pending` is a vector; cheap enough to be asked after each instruction. */
  get isPending(): boolean {
    return this.#next !== NONE;
  }

  /** The vector that may be entered now, were the global flag 1. */
  get pending(): Vector | undefined {
    return this.#byVector.get(this.#next)?.source.vector;
  }

  /** The handler of `pending` is entered: clears what the chip clears by that, except the global flag. */
  take(): void {
    const interrupt = this.#byVector.get(this.#next);
    if (interrupt === undefined) return;
    if (interrupt.source.clearedBy === "taking" && !interrupt.held) interrupt.clear();
    interrupt.source.onTaken?.();
  }

  refresh(interrupt: Interrupt): void {
    const { number } = interrupt.source.vector;
    const asks = interrupt.isEnabled && (interrupt.held || interrupt.isFlagged);
    if (asks === this.#pending.has(number)) return;
    if (asks) this.#pending.add(number);
    else this.#pending.delete(number);
    this.#next = this.#pending.size === 0 ? NONE : Math.min(...this.#pending);
  }

  /** After a reset: every bit is 0. */
  reset(): void {
    for (const interrupt of this.#byVector.values()) {
      interrupt.held = false;
      this.refresh(interrupt);
    }
  }

  /** A 1 clears a flag, a 0 leaves it; SBI writes its own bit alone (`mask`), as the register summaries say. */
  #hookFlags(address: number): void {
    this.cpu.writeHooks[address] = (value, _old, _address, mask) => {
      for (const interrupt of this.#byVector.values()) {
        const { flag, plainFlag } = interrupt.source;
        if (plainFlag && flag.address === address && (value & mask & flag.mask) !== 0) interrupt.clear();
      }
      return true;
    };
  }

  #hookEnables(address: number): void {
    this.#isSettable[address] = 1;
    this.cpu.writeHooks[address] = (value) => {
      this.cpu.data[address] = value;
      for (const interrupt of this.#byVector.values()) {
        if (interrupt.source.enable.address === address) this.refresh(interrupt);
      }
      return true;
    };
  }
}
