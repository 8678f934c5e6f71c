import type { Level } from "../wires/edge.ts";
import type { ChipCore } from "./chip-core.ts";
import type { Bit, Interrupt } from "./interrupts.ts";
import { hookAfter, type PinDrive, type PortPin, type Ports } from "./port.ts";
import type { Timer } from "./timer/timer.ts";

const counterMask = 0x0f;
const highestBit = 0x80;

interface UsiParts {
  readonly control: number;
  readonly status: number;
  readonly data: number;
  readonly buffer: number | undefined;
  readonly start: Interrupt;
  readonly overflow: Interrupt;
  readonly stopFlag: Bit;
  readonly dataIn: PortPin;
  readonly dataOut: PortPin;
  readonly clockPin: PortPin;
}

/**
 * The universal serial interface of the ATtiny: a shift register and a four-bit counter. Register descriptions of USICR
 * and USISR in the datasheet ATtiny25/45/85 2586, from memory.
 */
class Usi {
  readonly #core: ChipCore;
  readonly #parts: UsiParts;
  /** USICLK: with source 0 a strobe, with an external clock whether USITC counts. */
  readonly #strobe: Bit | undefined;
  readonly #toggle: Bit | undefined;
  readonly #clockSource: readonly (Bit | undefined)[];
  readonly #mode: readonly (Bit | undefined)[];
  /** What the data pin gives out: follows the shift register, or holds it from one edge of an external clock to the next. */
  #output: Level = 0;

  constructor(core: ChipCore, parts: UsiParts) {
    this.#core = core;
    this.#parts = parts;
    this.#strobe = core.bit("USICLK");
    this.#toggle = core.bit("USITC");
    this.#clockSource = ["USICS1", "USICS0"].map((name) => core.bit(name));
    this.#mode = ["USIWM1", "USIWM0"].map((name) => core.bit(name));
    const { cpu } = core;
    cpu.writeHooks[parts.data] = (value) => {
      cpu.data[parts.data] = value;
      this.#latch();
      return true;
    };
    cpu.writeHooks[parts.status] = (value) => {
      this.#writeStatus(value);
      return true;
    };
    cpu.writeHooks[parts.control] = (value) => {
      this.#writeControl(value);
      return true;
    };
    parts.clockPin.port.onLevel((bit, level) => {
      if (bit === parts.clockPin.bit) this.#clockEdge(level);
    });
    parts.dataIn.port.onLevel((bit, level) => {
      if (bit === parts.dataIn.bit) this.#dataEdge(level);
    });
  }

  /** Timer 0 matched. */
  timerMatch(): void {
    if (this.#core.number(this.#clockSource) === 1) {
      this.#shift();
      this.#count();
    }
  }

  reset(): void {
    this.#output = 0;
    this.#connect();
  }

  /** Flags are cleared by a 1; the counter is set. */
  #writeStatus(value: number): void {
    const { data } = this.#core.cpu;
    const { status, stopFlag, start, overflow } = this.#parts;
    const old = data[status] ?? 0;
    data[status] = (old & ~counterMask & ~(value & stopFlag.mask)) | (value & counterMask);
    if ((value & start.source.flag.mask) !== 0) start.clear();
    if ((value & overflow.source.flag.mask) !== 0) overflow.clear();
    this.#refreshPins();
  }

  #writeControl(value: number): void {
    const { cpu } = this.#core;
    const { control, start, overflow, clockPin } = this.#parts;
    const toggle = this.#toggle?.mask ?? 0;
    cpu.data[control] = value & ~toggle;
    start.refresh();
    overflow.refresh();
    this.#connect();
    this.#latch();
    const source = this.#core.number(this.#clockSource);
    if (source === 0 && this.#core.isSet(this.#strobe)) {
      // USICLK is a strobe here and reads as 0.
      this.#core.write(this.#strobe, false);
      this.#shift();
      this.#count();
    }
    if ((value & toggle) === 0) return;
    if (source >= 2 && this.#core.isSet(this.#strobe)) this.#count();
    const { pinRegister } = clockPin.port.model;
    cpu.writeData(pinRegister.address, 1 << clockPin.bit, 1 << clockPin.bit);
  }

  /** Sources 2 and 3: the rising or the falling edge shifts; the counter counts both, or USITC where USICLK is 1. */
  #clockEdge(level: Level): void {
    const source = this.#core.number(this.#clockSource);
    if (source < 2) return;
    const shifts = (source === 2) === (level === 1);
    if (shifts) this.#shift();
    else this.#latch();
    if (!this.#core.isSet(this.#strobe)) this.#count();
  }

  /** Two-wire mode: data that changes while the clock is high is a start or a stop. */
  #dataEdge(level: Level): void {
    if (this.#core.number(this.#mode) < 2) return;
    const { clockPin, start, stopFlag } = this.#parts;
    if (clockPin.port.level(clockPin.bit) === 0) return;
    if (level === 0) start.raise();
    else this.#core.write(stopFlag, true);
    this.#refreshPins();
  }

  #shift(): void {
    const { data } = this.#core.cpu;
    const { dataIn } = this.#parts;
    const input = dataIn.port.level(dataIn.bit);
    data[this.#parts.data] = ((data[this.#parts.data] ?? 0) << 1) | input;
    if (this.#core.number(this.#clockSource) < 2) this.#latch();
  }

  #count(): void {
    const { data } = this.#core.cpu;
    const { status, overflow, buffer } = this.#parts;
    const old = data[status] ?? 0;
    const counter = ((old & counterMask) + 1) & counterMask;
    data[status] = (old & ~counterMask) | counter;
    if (counter !== 0) return;
    if (buffer !== undefined) data[buffer] = data[this.#parts.data] ?? 0;
    overflow.raise();
    this.#refreshPins();
  }

  #latch(): void {
    this.#output = ((this.#core.cpu.data[this.#parts.data] ?? 0) & highestBit) === 0 ? 0 : 1;
    this.#refreshPins();
  }

  #refreshPins(): void {
    const { dataIn, dataOut, clockPin } = this.#parts;
    if (this.#core.number(this.#mode) === 0) return;
    for (const { port, bit } of [dataIn, dataOut, clockPin]) port.refreshPin(bit);
  }

  /** Three wires: the output pin follows the shift register. Two wires: data and clock are open collector. */
  #connect(): void {
    const { dataIn, dataOut, clockPin } = this.#parts;
    const mode = this.#core.number(this.#mode);
    dataOut.port.override(
      dataOut.bit,
      "usi",
      mode === 1
        ? (drive) => (drive === "low" || drive === "high" ? (this.#output === 1 ? "high" : "low") : drive)
        : undefined,
    );
    const openCollector =
      (isLow: () => boolean) =>
      (drive: PinDrive): PinDrive =>
        drive === "high" ? (isLow() ? "low" : "floating") : drive;
    const isTwoWire = mode >= 2;
    dataIn.port.override(dataIn.bit, "usi", isTwoWire ? openCollector(() => this.#output === 0) : undefined);
    clockPin.port.override(
      clockPin.bit,
      "usi",
      isTwoWire ? openCollector(() => this.#holdsClock(mode)) : undefined,
    );
  }

  /** The clock is held low after a start, and in mode 3 after the counter ran over, until the flag is cleared. */
  #holdsClock(mode: number): boolean {
    const { start, overflow } = this.#parts;
    return start.isFlagged || (mode === 3 && overflow.isFlagged);
  }
}

/** The USI of a chip that has one. */
export function addUsi(
  core: ChipCore,
  ports: Ports,
  timer0: Timer | undefined,
): { reset(): void } | undefined {
  const ways = { clearedBy: "condition", plainFlag: false, plainEnable: false } as const;
  const start = core.interrupt("USI_START_vect", core.bit("USISIF"), core.bit("USISIE"), ways);
  const overflow = core.interrupt("USI_OVF_vect", core.bit("USIOIF"), core.bit("USIOIE"), ways);
  const control = core.register("USICR")?.address;
  const status = core.register("USISR")?.address;
  const data = core.register("USIDR")?.address;
  const stopFlag = core.bit("USIPF");
  const dataIn = ports.pinOfFunction("USI_DI");
  const dataOut = ports.pinOfFunction("USI_DO");
  const clockPin = ports.pinOfFunction("USI_USCK");
  if (start === undefined || overflow === undefined || stopFlag === undefined) return undefined;
  if (control === undefined || status === undefined || data === undefined) return undefined;
  if (dataIn === undefined || dataOut === undefined || clockPin === undefined) return undefined;
  const buffer = core.register("USIBR")?.address;
  const usi = new Usi(core, {
    control,
    status,
    data,
    buffer,
    start,
    overflow,
    stopFlag,
    dataIn,
    dataOut,
    clockPin,
  });
  const source = ["USICS1", "USICS0"].map((name) => core.bit(name));
  timer0?.onMatch(
    () => usi.timerMatch(),
    () => core.number(source) === 1,
  );
  hookAfter(core, control, () => timer0?.settle());
  return usi;
}
