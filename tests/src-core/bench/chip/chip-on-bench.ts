import { type Chip, createChip } from "../../../../src-core/bench/chip/chip.ts";
import { Timeline } from "../../../../src-core/bench/chip/timeline.ts";
import { connect, type Wiring } from "../../../../src-core/bench/chip/wiring.ts";
import { EventQueue } from "../../../../src-core/bench/time/event-queue.ts";
import type { Time } from "../../../../src-core/bench/time/time.ts";
import { createWires, type Wires } from "../../../../src-core/bench/wires/wires.ts";

/** A chip without a program, wired to a bench; a test writes its registers by their names and lets cycles go by. */
export class ChipOnBench {
  readonly queue = new EventQueue();
  readonly wires: Wires;
  readonly chip: Chip;
  readonly #timeline: Timeline;

  constructor(name: string, wiring: Wiring, hz = 16_000_000, riseTime: Time = 0) {
    const made = createChip({ name, hz });
    if (made.kind !== "chip") throw new Error(made.message);
    this.chip = made.chip;
    this.wires = createWires(this.queue, riseTime);
    connect(this.chip, wiring, this.wires);
    const { queue, wires } = this;
    this.#timeline = new Timeline(this.chip, {
      wires,
      ended: false,
      get next() {
        return queue.next;
      },
      advanceTo: (time) => queue.advanceTo(time),
    });
  }

  get cycles(): number {
    return this.chip.cpu.cycles;
  }

  get pending(): string | undefined {
    return this.chip.pendingVector?.names[0];
  }

  write(register: string, value: number): void {
    this.chip.cpu.writeData(this.#address(register), value);
  }

  read(register: string): number {
    return this.chip.cpu.readData(this.#address(register));
  }

  /** Bits of a register by their names. */
  bits(...names: string[]): number {
    return names.reduce((value, name) => {
      const bit = this.chip.core.bit(name);
      if (bit === undefined) throw new Error(`no bit ${name}`);
      return value | bit.mask;
    }, 0);
  }

  /** Lets cycles go by. */
  pass(cycles: number): void {
    this.runUntil(() => false, cycles);
  }

  /** Lets cycles go by until something is so; the cycle at which it is, or undefined after `limit` more. */
  runUntil(isSo: () => boolean, limit: number): number | undefined {
    const { cpu } = this.chip;
    const end = cpu.cycles + limit;
    for (;;) {
      this.#timeline.catchUp();
      if (isSo()) return cpu.cycles;
      if (cpu.cycles >= end) return undefined;
      cpu.cycles = Math.max(cpu.cycles, Math.min(end, this.#timeline.due));
    }
  }

  /** Cycles at which a flag was set, one after the other; each is cleared at once by writing 1 to it. */
  risesOf(register: string, flag: string, count: number): readonly number[] {
    const mask = this.bits(flag);
    return Array.from({ length: count }, () => {
      const cycle = this.runUntil(() => (this.read(register) & mask) !== 0, 100_000_000);
      if (cycle === undefined) throw new Error(`${flag} was not set`);
      this.write(register, mask);
      return cycle;
    });
  }

  #address(register: string): number {
    const found = this.chip.core.register(register);
    if (found === undefined) throw new Error(`${this.chip.model.printedName} has no ${register}`);
    return found.address;
  }
}

/** Differences of neighbours. */
export function steps(numbers: readonly number[]): readonly number[] {
  return numbers.slice(1).map((number, index) => number - (numbers[index] ?? 0));
}

const common = { hasExternalPullUps: false, shifter: "inverting" } as const;

/** Wirings that a maker may choose on each chip. */
export const wirings = {
  atmega328p: { ...common, clock: "PD2", data: "PD3", transmit: "PD1", rts: "PD4", dtr: "PD5" },
  atmega168: { ...common, clock: "PD2", data: "PD3", transmit: "PD1", rts: "PD4", dtr: "PD5" },
  atmega32u4: { ...common, clock: "PD0", data: "PD1", transmit: "PD3", rts: "PB4", dtr: "PB5" },
  atmega2560: { ...common, clock: "PE4", data: "PE5", transmit: "PE1", rts: "PJ0", dtr: "PK0" },
  attiny25: { ...common, clock: "PB2", data: "PB0", transmit: "PB1", rts: "PB3", dtr: "PB4" },
  attiny45: { ...common, clock: "PB2", data: "PB0", transmit: "PB1", rts: "PB3", dtr: "PB4" },
  attiny85: { ...common, clock: "PB2", data: "PB0", transmit: "PB1", rts: "PB3", dtr: "PB4" },
} as const;

export type WiredChip = keyof typeof wirings;
export const wiredChips = Object.keys(wirings) as readonly WiredChip[];

export function onBench(name: WiredChip, changes: Partial<Wiring> = {}, hz?: number): ChipOnBench {
  return new ChipOnBench(name, { ...wirings[name], ...changes }, hz);
}
