import type { ExternalInterrupt, PinChangeInterrupt } from "../../model/chips/chip.ts";
import type { At } from "../../reader/typed/nodes.ts";
import type { Chip } from "../chip/chip.ts";
import type { ChipCore } from "../chip/chip-core.ts";
import type { Bit } from "../chip/interrupts.ts";
import type { PortPin } from "../chip/port.ts";
import type { Wiring } from "../chip/wiring.ts";
import type { MouseByte, Observation } from "../run-record.ts";
import type { Edge } from "../wires/edge.ts";
import type { Wires } from "../wires/wires.ts";
import { type CodePlaces, spanOf } from "./code-places.ts";
import { observationsOf } from "./observations.ts";
import { anything, type Look, type Pulse } from "./pulse.ts";

/** An interrupt that the clock pin may ask for. */
interface ClockInterrupt {
  readonly flag: Bit | undefined;
  readonly enable: Bit | undefined;
  /** Has to be 1, too; undefined where there is none. */
  readonly mask: Bit | undefined;
  /** ISCn1 and ISCn0; undefined where every change of the pin asks. */
  readonly senseBits: readonly (Bit | undefined)[] | undefined;
}

/** Values of ISCn1 and ISCn0; register descriptions of EICRA in the datasheets, from memory. */
const anyChange = 1;
const fallingEdge = 2;

/**
 * What a firmware sees of the mouse's clock and data lines, pulse by pulse. Made before the chip is connected to the
 * wires, so that it meets an edge before the chip does.
 */
export class FirmwareWatch {
  /** What the code that is about to read a port looks at; the engine says it before each read, where it knows. */
  look: Look | undefined;
  readonly #core: ChipCore;
  readonly #wires: Wires;
  readonly #clock: PortPin;
  readonly #data: PortPin;
  readonly #rts: PortPin | undefined;
  readonly #known: CodePlaces | undefined;
  readonly #interrupts: readonly ClockInterrupt[];
  readonly #pulses: Pulse[] = [];
  readonly #torn: Observation[] = [];
  #pulse: Pulse | undefined;
  /** How often data was read at which place while the mouse held the clock low, by what reads that pin, and by what may read it. */
  readonly #dataReads = new Map<At, number>();
  readonly #likelyDataReads = new Map<At, number>();
  #rtsAt: At | undefined;

  /** `known` is what the source says of itself; undefined for an image. */
  constructor(chip: Chip, wiring: Wiring, wires: Wires, known?: CodePlaces) {
    const { core, ports, model } = chip;
    const clock = ports.pin(wiring.clock);
    const data = ports.pin(wiring.data);
    if (clock === undefined || data === undefined)
      throw new Error(`${model.printedName} has no pin ${wiring.clock} or ${wiring.data}`);
    this.#core = core;
    this.#wires = wires;
    this.#clock = clock;
    this.#data = data;
    this.#rts = wiring.rts === undefined ? undefined : ports.pin(wiring.rts);
    this.#known = known;
    const pin = model.pins.find(({ name }) => name === wiring.clock);
    this.#interrupts = [pin?.externalInterrupt, pin?.pinChange]
      .filter((each) => each !== undefined)
      .map((each) => interruptOf(core, each));
    wires.clock.onEdge((edge) => this.#clockEdge(edge));
    const looked = [clock, data, this.#rts].filter((each) => each !== undefined);
    const status = model.usarts.find(({ txPin }) => txPin === wiring.transmit)?.control[0].address;
    if (status !== undefined) {
      core.cpu.readHooks[status] = () => {
        if (this.#pulse !== undefined) this.#pulse.uartLooks += 1;
        return core.cpu.data[status] ?? 0;
      };
    }
    for (const address of new Set(looked.map(addressOf))) {
      core.cpu.readHooks[address] = () => {
        this.#read(address);
        return core.cpu.data[address] ?? 0;
      };
    }
  }

  /** Where the code is. */
  get lastAt(): At | undefined {
    return this.#core.place;
  }

  /** As the source says, and better where the run shows it. */
  get places(): CodePlaces | undefined {
    if (this.#known === undefined) return undefined;
    const { receives, rts, ...others } = this.#known;
    const reads = mostOften(this.#dataReads) ?? mostOften(this.#likelyDataReads);
    return { ...others, receives: spanOf(reads) ?? receives, rts: spanOf(this.#rtsAt) ?? rts };
  }

  /** An interrupt handler changed a variable between two bytes of it that the code at this place reads or writes. */
  tear(at: At | undefined): void {
    if (this.#isUndisturbed(at)) return;
    const time = this.#core.clock.timeOf(this.#core.now);
    this.#torn.push({ kind: "torn-access", time, at });
  }

  /** All that is to be said when the run is over, of the bytes that the mouse sent. In order of time. */
  observations(sent: readonly MouseByte[]): readonly Observation[] {
    this.#finish();
    return [...observationsOf(this.#pulses, sent), ...this.#torn].sort((a, b) => a.time - b.time);
  }

  #isUndisturbed(at: At | undefined): boolean {
    const span = spanOf(at);
    return (this.#known?.undisturbed ?? []).some(
      ({ file, start, end }) => span?.file === file && start < span.end && span.start < end,
    );
  }

  #clockEdge({ time, level, cause }: Edge): void {
    if (level === 1) {
      if (this.#pulse !== undefined) this.#rises(this.#pulse);
      return;
    }
    this.#finish();
    if (cause.party !== "mouse") return;
    this.#pulse = {
      fall: time,
      byInterrupt: false,
      isSeen: false,
      isLate: false,
      uartLooks: 0,
      began: this.#core.place,
      next: undefined,
      readWhileLow: false,
      readLate: undefined,
    };
    this.#pulses.push(this.#pulse);
  }

  #rises(pulse: Pulse): void {
    // Whoever is told of every change finds the clock high if he comes later.
    this.#tellOfInterrupts(pulse, anyChange);
    pulse.isLate = this.#asking(fallingEdge).some(({ flag }) => this.#core.isSet(flag));
  }

  /** The pulse is over: the next one begins, or the run ends. */
  #finish(): void {
    const pulse = this.#pulse;
    if (pulse === undefined) return;
    this.#pulse = undefined;
    pulse.next = this.#core.place;
    this.#tellOfInterrupts(pulse, fallingEdge);
  }

  /** A handler that still waits did not see the edge that called it. */
  #tellOfInterrupts(pulse: Pulse, sense: number): void {
    for (const { flag } of this.#asking(sense)) {
      pulse.byInterrupt = true;
      pulse.isSeen ||= !this.#core.isSet(flag);
    }
  }

  /** Interrupts that are enabled, with this sense. */
  #asking(sense: number): readonly ClockInterrupt[] {
    const core = this.#core;
    return this.#interrupts.filter(
      ({ enable, mask, senseBits }) =>
        core.isSet(enable) &&
        (mask === undefined || core.isSet(mask)) &&
        (senseBits === undefined ? anyChange : core.number(senseBits)) === sense,
    );
  }

  #read(address: number): void {
    const mask = this.look?.mask ?? anything;
    if (mask !== anything && this.#rts !== undefined && looksAt(this.#rts, address, mask))
      this.#rtsAt = this.look?.at;
    const pulse = this.#pulse;
    if (pulse === undefined) return;
    const clock = looksAt(this.#clock, address, mask);
    const data = looksAt(this.#data, address, mask);
    if (this.#wires.clock.level === 0) {
      pulse.isSeen ||= clock;
      pulse.readWhileLow ||= data;
      if (data && mask !== anything) count(this.#dataReads, this.look?.at);
      else if (data && !clock) count(this.#likelyDataReads, this.look?.at);
    } else if (data && !clock && mask !== anything && pulse.readLate === undefined) {
      pulse.readLate = { time: this.#core.clock.timeOf(this.#core.now), at: this.look?.at };
    }
  }
}

function looksAt(pin: PortPin, address: number, mask: number): boolean {
  return address === addressOf(pin) && (mask & (1 << pin.bit)) !== 0;
}

function count(places: Map<At, number>, at: At | undefined): void {
  if (at !== undefined) places.set(at, (places.get(at) ?? 0) + 1);
}

/** The first of those that came most often: of the bits of a byte most are read at one place. */
function mostOften(places: ReadonlyMap<At, number>): At | undefined {
  return [...places].toSorted(([, a], [, b]) => b - a)[0]?.[0];
}

function addressOf({ port }: PortPin): number {
  return port.model.pinRegister.address;
}

function interruptOf(core: ChipCore, each: ExternalInterrupt | PinChangeInterrupt): ClockInterrupt {
  return {
    flag: each.flag && core.bitAt(each.flag),
    enable: core.bitAt(each.enable),
    mask: "mask" in each ? core.bitAt(each.mask) : undefined,
    senseBits: "sense" in each ? (each.sense ?? []).map((bit) => core.bitAt(bit)) : undefined,
  };
}
