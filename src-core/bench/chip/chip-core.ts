import { CPU } from "avr8js";
import type { AvrChip, BitPlace, Register } from "../../model/chips/chip.ts";
import { bitPlace, registerNamed } from "../../model/chips/find-bits.ts";
import type { At } from "../../reader/typed/nodes.ts";
import type { Time } from "../time/time.ts";
import { ChipClock } from "./chip-clock.ts";
import { CycleEvents } from "./cycle-events.ts";
import { type Bit, type Interrupt, type InterruptSource, Interrupts } from "./interrupts.ts";

/** A register use that this model of the chip does nothing about. */
export interface NotSimulated {
  readonly what: string;
  readonly cycle: number;
  readonly at: At | undefined;
}

/** Data space below this is the CPU's registers and, above them, the first I/O registers. */
const firstRegister = 0x20;
/** avr8js adds this to the RAM that it is asked for. */
const registerSpace = 0x100;

/** What all parts of a chip share: memory, cycles, interrupts, and the names of the registers. */
export class ChipCore {
  readonly model: AvrChip;
  readonly cpu: CPU;
  readonly clock: ChipClock;
  readonly events = new CycleEvents();
  readonly interrupts: Interrupts;
  readonly notSimulated: NotSimulated[] = [];
  /** The place in the source that is running; edges of wires carry it. The engine sets it. */
  place: At | undefined;
  /** How often a handler was entered, and what of that the code runs now: 0 outside of handlers, undefined where nobody says. */
  handlersEntered = 0;
  handlerRun: number | undefined;
  /** Called before the chip drives a pin otherwise than before; moves the bench on to this moment. */
  moveBench: (time: Time) => void = () => {};
  /**
   * Counts what the code may see or bring about besides values of registers: events of the chip, levels that changed, reads
   * of what changes without an event, such as a counter. While it stays the same, so do all registers that the code leaves alone.
   */
  happenings = 0;
  /** By address: writing what the register holds already does nothing, though something acts on it. */
  readonly isSettable: Uint8Array;
  #eventCycle: number | undefined;
  #isFollowing = false;

  constructor(model: AvrChip, hz: number, program: Uint16Array) {
    this.model = model;
    this.cpu = new CPU(program, model.memory.ramEnd + 1 - registerSpace);
    this.clock = new ChipClock(hz);
    this.isSettable = new Uint8Array(this.cpu.data.length);
    this.interrupts = new Interrupts(this.cpu, this.isSettable);
  }

  /** The cycle at which what is being done happens: that of an event while one happens, else that of the code. */
  get now(): number {
    return this.#eventCycle ?? this.cpu.cycles;
  }

  /** What is happening is done by a part of the chip, without the code. */
  get isInEvent(): boolean {
    return this.#eventCycle !== undefined;
  }

  /** Lets happen what comes next in the chip. */
  runNextEvent(): void {
    const cycle = this.events.next;
    const task = this.events.takeNext();
    if (task === undefined) return;
    const running = this.place;
    this.#eventCycle = cycle;
    this.happenings += 1;
    this.place = task.place;
    task.happen();
    this.place = running;
    this.#eventCycle = undefined;
  }

  /** A level changes at a pin from outside. What the chip does at once about it happens at the bench's own time. */
  follow(change: () => void): void {
    const outer = this.#isFollowing;
    this.#isFollowing = true;
    change();
    this.#isFollowing = outer;
  }

  beforeDrive(): void {
    if (!this.#isFollowing) this.moveBench(this.clock.timeOf(this.now));
  }

  /** The code writes a register. */
  writeFromCode(address: number, value: number): void {
    const { cpu } = this;
    const acts = cpu.writeHooks[address] !== undefined && this.isSettable[address] === 0;
    if (acts || cpu.data[address] !== value) this.happenings += 1;
    cpu.writeData(address, value);
  }

  register(name: string): Register | undefined {
    return registerNamed(this.model.registers, name);
  }

  bit(name: string): Bit | undefined {
    const place = bitPlace(this.model.registers, name);
    return place === undefined ? undefined : this.bitAt(place);
  }

  bitAt({ register, bit }: BitPlace): Bit | undefined {
    const found = this.register(register);
    return found === undefined ? undefined : { address: found.address, mask: 1 << bit };
  }

  /** Whether the bit is there and 1. */
  isSet(bit: Bit | undefined): boolean {
    return bit !== undefined && ((this.cpu.data[bit.address] ?? 0) & bit.mask) !== 0;
  }

  write(bit: Bit | undefined, level: boolean): void {
    if (bit === undefined) return;
    const old = this.cpu.data[bit.address] ?? 0;
    this.cpu.data[bit.address] = level ? old | bit.mask : old & ~bit.mask;
  }

  /** The number that bits make, the highest first; bits that the chip lacks are 0. */
  number(bits: readonly (Bit | undefined)[]): number {
    return bits.reduce((value, bit) => value * 2 + (this.isSet(bit) ? 1 : 0), 0);
  }

  /** Undefined where the chip lacks the vector or one of the bits. */
  interrupt(
    vector: string,
    flag: Bit | undefined,
    enable: Bit | undefined,
    ways: Omit<InterruptSource, "vector" | "flag" | "enable">,
  ): Interrupt | undefined {
    const found = this.model.vectors.find(({ names }) => names.includes(vector));
    if (found === undefined || flag === undefined || enable === undefined) return undefined;
    return this.interrupts.add({ vector: found, flag, enable, ...ways });
  }

  /** Says once that something is not simulated. */
  tellNotSimulated(what: string): void {
    if (this.notSimulated.some((each) => each.what === what)) return;
    this.notSimulated.push({ what, cycle: this.now, at: this.place });
  }

  /** Every register of a peripheral is 0 again; memory stays as it was. */
  clearRegisters(): void {
    this.cpu.data.fill(0, firstRegister, this.model.memory.ramStart);
    this.cpu.reset();
    this.interrupts.reset();
  }
}
