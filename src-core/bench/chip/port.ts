import type { Port as PortModel } from "../../model/chips/chip.ts";
import type { Level } from "../wires/edge.ts";
import type { ChipCore } from "./chip-core.ts";
import type { Bit } from "./interrupts.ts";

/** What a pin does to what is connected to it. */
export type PinDrive = "low" | "high" | "pulled-up" | "floating";

/** What a peripheral makes of a pin, given what the port's registers say. */
export type PinOverride = (drive: PinDrive) => PinDrive;

/** Who may take a pin from its port; USART and USI come before timers. */
export type PinOwner = "usart" | "usi" | `timer${number}`;

/** A port: eight pins or fewer. Reads of PINx are up to date at all times. */
export class Port {
  readonly model: PortModel;
  readonly #core: ChipCore;
  readonly #pullUpsOff: Bit | undefined;
  readonly #inputs = new Map<number, Level>();
  readonly #overrides = new Map<number, Map<PinOwner, PinOverride>>();
  readonly #drives = new Map<number, PinDrive>();
  readonly #driveListeners: ((bit: number, drive: PinDrive) => void)[] = [];
  readonly #levelListeners: ((bit: number, level: Level) => void)[] = [];

  constructor(core: ChipCore, model: PortModel) {
    this.#core = core;
    this.model = model;
    this.#pullUpsOff = core.bit("PUD");
    for (const bit of model.bits) this.#drives.set(bit, "floating");
    const { cpu } = core;
    const pin = model.pinRegister.address;
    const output = model.outputRegister.address;
    const direction = model.directionRegister.address;
    for (const address of [output, direction]) {
      core.isSettable[address] = 1;
      cpu.writeHooks[address] = (value, old) => {
        cpu.data[address] = value;
        this.#refreshPins(value ^ old);
        return true;
      };
    }
    // A 1 written to PINx turns the bit of PORTx over.
    cpu.writeHooks[pin] = (value, _old, _address, mask) => {
      cpu.data[output] = (cpu.data[output] ?? 0) ^ (value & mask);
      this.#refreshPins(value & mask);
      return true;
    };
  }

  driveOf(bit: number): PinDrive {
    return this.#drives.get(bit) ?? "floating";
  }

  level(bit: number): Level {
    return ((this.#core.cpu.data[this.model.pinRegister.address] ?? 0) >> bit) & 1 ? 1 : 0;
  }

  onDrive(listener: (bit: number, drive: PinDrive) => void): void {
    this.#driveListeners.push(listener);
  }

  /** A level that PINx reads changed. */
  onLevel(listener: (bit: number, level: Level) => void): void {
    this.#levelListeners.push(listener);
  }

  /** What comes in from outside while the pin is not driven; a pin of which this is not said is not connected. */
  setInput(bit: number, level: Level): void {
    this.#inputs.set(bit, level);
    this.#readLevel(bit);
  }

  override(bit: number, owner: PinOwner, override: PinOverride | undefined): void {
    const overrides = this.#overrides.get(bit) ?? new Map<PinOwner, PinOverride>();
    this.#overrides.set(bit, overrides);
    if (override === undefined) overrides.delete(owner);
    else overrides.set(owner, override);
    this.refreshPin(bit);
  }

  refresh(): void {
    this.#refreshPins(0xff);
  }

  #refreshPins(mask: number): void {
    for (const bit of this.model.bits) if ((mask >> bit) & 1) this.refreshPin(bit);
  }

  refreshPin(bit: number): void {
    const drive = this.#drive(bit);
    if (drive !== this.#drives.get(bit)) {
      this.#core.beforeDrive();
      this.#drives.set(bit, drive);
      for (const listener of this.#driveListeners) listener(bit, drive);
    }
    this.#readLevel(bit);
  }

  #drive(bit: number): PinDrive {
    const { cpu } = this.#core;
    const mask = 1 << bit;
    const isHigh = ((cpu.data[this.model.outputRegister.address] ?? 0) & mask) !== 0;
    const isOutput = ((cpu.data[this.model.directionRegister.address] ?? 0) & mask) !== 0;
    const isPulledUp = isHigh && !this.#core.isSet(this.#pullUpsOff);
    const own: PinDrive = isOutput ? (isHigh ? "high" : "low") : isPulledUp ? "pulled-up" : "floating";
    const overrides = this.#overrides.get(bit);
    if (overrides === undefined) return own;
    const [first] = overrides.values();
    const override = overrides.get("usart") ?? overrides.get("usi") ?? first;
    return override === undefined ? own : override(own);
  }

  /** An open input reads low where nothing pulls it up: on a real chip it may read anything. */
  #readLevel(bit: number): void {
    const drive = this.driveOf(bit);
    const level = drive === "low" ? 0 : drive === "high" ? 1 : this.#inputs.get(bit);
    const isHigh = level === undefined ? drive === "pulled-up" : level === 1;
    const { cpu } = this.#core;
    const address = this.model.pinRegister.address;
    const old = cpu.data[address] ?? 0;
    const now = isHigh ? old | (1 << bit) : old & ~(1 << bit);
    if (now === old) return;
    this.#core.happenings += 1;
    cpu.data[address] = now;
    for (const listener of this.#levelListeners) listener(bit, isHigh ? 1 : 0);
  }
}

/** The ports of a chip and its pins by name. */
export class Ports {
  readonly #core: ChipCore;
  readonly #ports: readonly Port[];

  constructor(core: ChipCore) {
    this.#core = core;
    this.#ports = core.model.ports.map((model) => new Port(core, model));
    const control = core.bit("PUD");
    if (control === undefined) return;
    hookAfter(core, control.address, () => this.refresh());
  }

  /** The pin `PD2`; undefined where the chip has none of that name. */
  pin(name: string): PortPin | undefined {
    const pin = this.#core.model.pins.find((each) => each.name === name);
    const port = this.#ports.find(({ model }) => model.letter === pin?.port);
    return pin === undefined || port === undefined ? undefined : { port, bit: pin.bit };
  }

  /** The pin that has this other function: `OC1A`. */
  pinOfFunction(name: string): PortPin | undefined {
    const pin = this.#core.model.pins.find(({ functions }) => functions.includes(name));
    return pin === undefined ? undefined : this.pin(pin.name);
  }

  refresh(): void {
    for (const port of this.#ports) port.refresh();
  }
}

export interface PortPin {
  readonly port: Port;
  readonly bit: number;
}

/** Calls back after a register was written, and after what others do about it. */
export function hookAfter(core: ChipCore, address: number, then: (written: number) => void): void {
  const { cpu } = core;
  const earlier = cpu.writeHooks[address];
  cpu.writeHooks[address] = (value, old, at, mask) => {
    if (earlier?.(value, old, at, mask) !== true) cpu.data[at] = value;
    then(value);
    return true;
  };
}
