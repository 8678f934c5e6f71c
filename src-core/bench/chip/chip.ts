import type { CPU } from "avr8js";
import type { AvrChip, Vector } from "../../model/chips/chip.ts";
import { avrChipNamed } from "../../model/chips.ts";
import { ChipCore } from "./chip-core.ts";
import { addClockDivider } from "./clock-divider.ts";
import { tellUnsimulatedRegisters } from "./not-simulated.ts";
import { addPinInterrupts } from "./pin-interrupts.ts";
import { Ports } from "./port.ts";
import { globalFlag, statusRegister } from "./status-register.ts";
import { addTimers } from "./timer/add-timers.ts";
import type { Timer } from "./timer/timer.ts";
import { Usart } from "./usart.ts";
import { addUsi } from "./usi.ts";
import { Watchdog } from "./watchdog.ts";

/** Chips that the bench has; what else the model knows differs in ways that are not simulated. */
export const simulatedChips = [
  "atmega328p",
  "atmega328",
  "atmega168",
  "atmega168p",
  "atmega88",
  "atmega88p",
  "atmega48",
  "atmega32u4",
  "atmega2560",
  "atmega1280",
  "attiny25",
  "attiny45",
  "attiny85",
] as const;

export interface ChipOptions {
  /** Name of the model: `atmega328p`. */
  readonly name: string;
  /** The clock before CLKPR divides it. */
  readonly hz: number;
  /** Flash from address 0 in words; none where an interpreter runs the sources. */
  readonly program?: Uint16Array;
}

export type ChipResult =
  | { readonly kind: "chip"; readonly chip: Chip }
  | { readonly kind: "not-simulated"; readonly message: string };

/** A chip at power-up; `not-simulated` for one that is not in `simulatedChips`. */
export function createChip({ name, hz, program }: ChipOptions): ChipResult {
  const model = avrChipNamed(name);
  if (model === undefined || !simulatedChips.some((each) => each === model.name)) {
    const printed = model?.printedName ?? name;
    return {
      kind: "not-simulated",
      message: `${printed} is not simulated; choose one of ${simulatedChips.join(", ")}`,
    };
  }
  return { kind: "chip", chip: new Chip(model, hz, flashOf(model, program)) };
}

/** Flash that nothing was written to is all ones. */
function flashOf(model: AvrChip, program: Uint16Array | undefined): Uint16Array {
  if (program === undefined) return new Uint16Array(0);
  const flash = new Uint16Array((model.memory.flashEnd + 1) / 2).fill(0xffff);
  flash.set(program.subarray(0, flash.length));
  return flash;
}

/**
 * A microcontroller: data space with everything that its registers do, cycles, and the handler that it would enter. Who
 * runs its code, an interpreter or the instructions of an image, counts `cpu.cycles` up and lets a `Timeline` do what
 * happens by then; 16-bit registers are read low byte first and written high byte first, as avr-gcc does.
 */
export class Chip {
  readonly core: ChipCore;
  readonly ports: Ports;
  readonly watchdog: Watchdog;
  readonly timers: ReadonlyMap<number, Timer>;
  readonly usarts: readonly Usart[];
  /** Called after a reset that the watchdog made; the code begins anew. */
  onWatchdogReset: () => void = () => {};
  readonly #usi: { reset(): void } | undefined;

  constructor(model: AvrChip, hz: number, program: Uint16Array) {
    const core = new ChipCore(model, hz, program);
    this.core = core;
    this.ports = new Ports(core);
    addPinInterrupts(core, this.ports);
    this.timers = addTimers(core, this.ports);
    this.usarts = model.usarts.map((usart) => new Usart(core, this.ports, usart));
    this.#usi = addUsi(core, this.ports, this.timers.get(0));
    this.watchdog = new Watchdog(core, () => {
      this.#reset("WDRF");
      this.onWatchdogReset();
    });
    addClockDivider(core);
    tellUnsimulatedRegisters(core, this.timers);
    this.#reset("PORF");
  }

  get cpu(): CPU {
    return this.core.cpu;
  }

  get model(): AvrChip {
    return this.core.model;
  }

  /** The handler that the chip enters next, if interrupts are on. */
  get pendingVector(): Vector | undefined {
    return this.core.interrupts.pending;
  }

  get interruptsEnabled(): boolean {
    return this.cpu.interruptsEnabled;
  }

  /**
   * The handler of `pendingVector` is entered: clears its flag where entering does, and the global flag. The cycles that
   * entering takes, and where the code goes on, are the engine's.
   */
  takeInterrupt(): void {
    this.core.interrupts.take();
    this.cpu.data[statusRegister] = (this.cpu.data[statusRegister] ?? 0) & ~globalFlag;
  }

  /** Registers as the datasheets have them after a reset from this cause; memory stays. */
  #reset(cause: "PORF" | "WDRF"): void {
    const { core } = this;
    const flag = core.bit(cause);
    // Flags of earlier causes stay until somebody clears them.
    const earlier = cause === "WDRF" && flag !== undefined ? (core.cpu.data[flag.address] ?? 0) : 0;
    core.clearRegisters();
    core.clock.divide(1, core.now);
    if (flag !== undefined) core.cpu.data[flag.address] = earlier | flag.mask;
    const highSpeedTop = core.register("OCR1C");
    // ATtiny25/45/85 datasheet 2586, OCR1C: initial value 255; from memory.
    if (highSpeedTop?.width === 8) core.cpu.data[highSpeedTop.address] = 0xff;
    for (const timer of this.timers.values()) timer.reset();
    for (const usart of this.usarts) usart.reset();
    this.#usi?.reset();
    this.watchdog.reset();
    this.ports.refresh();
  }
}
