import type { Usart as UsartModel } from "../../model/chips/chip.ts";
import type { ChipCore } from "./chip-core.ts";
import type { CycleTask } from "./cycle-events.ts";
import type { Bit, Interrupt } from "./interrupts.ts";
import type { PortPin } from "./port.ts";

/** How a frame on the line looks, and how long each of its bits is. */
export interface FrameFormat {
  readonly bitCycles: number;
  readonly dataBits: number;
  /** UPMn1:0: 2 for even, 3 for odd parity. */
  readonly parityCode: number;
}

interface Received {
  readonly value: number;
  readonly framingError: boolean;
  readonly parityError: boolean;
}

/** Bytes that wait to be read, and one behind them in the shift register; "Receiver Error Flags", Data OverRun. */
const room = 3;

/**
 * The receiver of a USART, by "Asynchronous Data Reception" and "Data Reception - The USART Receiver" of the ATmega328P datasheet.
 * A fall of the line begins a frame if the line is still low in the middle of the bit; each bit is what the line is in its middle,
 * where the real chip takes the majority of three looks around it. Stop bits behind the first are not looked at.
 */
export class UsartReceiver {
  readonly #core: ChipCore;
  readonly #pin: PortPin | undefined;
  readonly #task: CycleTask;
  readonly #format: () => FrameFormat;
  readonly #complete: Interrupt | undefined;
  readonly #enable: Bit | undefined;
  readonly #flags: Record<"framing" | "overrun" | "parity" | "ninth", Bit | undefined>;
  readonly #received: Received[] = [];
  /** Of the frame that is coming in; undefined between frames. */
  #frame: { readonly format: FrameFormat; readonly levels: number[] } | undefined;
  #isOn = false;

  constructor(
    core: ChipCore,
    pin: PortPin | undefined,
    model: UsartModel,
    complete: Interrupt | undefined,
    format: () => FrameFormat,
  ) {
    this.#core = core;
    this.#pin = pin;
    this.#format = format;
    this.#complete = complete;
    this.#task = core.events.task(() => this.#sample());
    const suffix = /\d*$/.exec(model.data.name)?.[0] ?? "";
    this.#enable = core.bitAt(model.bits.receiveEnable);
    this.#flags = {
      framing: core.bit(`FE${suffix}`),
      overrun: core.bit(`DOR${suffix}`),
      parity: core.bit(`UPE${suffix}`),
      ninth: core.bit(`RXB8${suffix}`),
    };
    pin?.port.onLevel((bit, level) => {
      if (bit === pin.bit && level === 0) this.#falls();
    });
  }

  reset(): void {
    this.#isOn = false;
    this.#empty();
  }

  /** The enable bit may have changed: a receiver that is switched off forgets what it has, and lets the pin go. */
  refresh(): void {
    const isOn = this.#core.isSet(this.#enable);
    if (isOn === this.#isOn) return;
    this.#isOn = isOn;
    if (!isOn) this.#empty();
    const takeIn = (own: string) => (own === "high" || own === "pulled-up" ? "pulled-up" : "floating");
    this.#pin?.port.override(this.#pin.bit, "usart", isOn ? takeIn : undefined);
  }

  /** What reading UDR gives; the flags then tell of the byte behind it. */
  read(): number {
    const { value = 0 } = this.#received.shift() ?? {};
    // What is read next is another byte, and another state of the flags.
    this.#core.happenings += 1;
    this.#core.write(this.#flags.overrun, false);
    this.#show();
    return value & 0xff;
  }

  #empty(): void {
    this.#frame = undefined;
    this.#core.events.cancel(this.#task);
    this.#received.length = 0;
    this.#core.write(this.#flags.overrun, false);
    this.#show();
  }

  #falls(): void {
    if (!this.#isOn || this.#frame !== undefined) return;
    const format = this.#format();
    this.#frame = { format, levels: [] };
    this.#core.events.at(this.#task, this.#core.now + format.bitCycles / 2);
  }

  #sample(): void {
    const frame = this.#frame;
    if (frame === undefined) return;
    const { format, levels } = frame;
    const level = this.#level;
    if (levels.length === 0) {
      if (level === 1) {
        this.#frame = undefined;
        return;
      }
      // Only now is it known that there is a start bit.
      if (this.#received.length === room) {
        this.#received.pop();
        this.#core.write(this.#flags.overrun, true);
      }
    }
    levels.push(level);
    const { bitCycles, dataBits, parityCode } = format;
    const last = 1 + dataBits + (parityCode >= 2 ? 1 : 0);
    if (levels.length <= last) {
      this.#core.events.at(this.#task, this.#core.now + bitCycles);
      return;
    }
    this.#frame = undefined;
    const data = levels.slice(1, 1 + dataBits);
    const ones = data.reduce((sum, bit) => sum + bit, 0);
    this.#received.push({
      value: data.reduce((value, bit, index) => value | (bit << index), 0),
      framingError: level === 0,
      parityError: parityCode >= 2 && levels[1 + dataBits] !== ((ones + parityCode) & 1),
    });
    this.#show();
  }

  get #level(): number {
    const pin = this.#pin;
    if (pin === undefined) return 1;
    return ((this.#core.cpu.data[pin.port.model.pinRegister.address] ?? 0) >> pin.bit) & 1;
  }

  /** Flags are those of the byte that is read next. */
  #show(): void {
    const [first] = this.#received;
    this.#core.write(this.#flags.framing, first?.framingError === true);
    this.#core.write(this.#flags.parity, first?.parityError === true);
    this.#core.write(this.#flags.ninth, first !== undefined && (first.value & 0x100) !== 0);
    if (first === undefined) this.#complete?.clear();
    else this.#complete?.raise();
  }
}
