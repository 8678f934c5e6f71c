import type { Usart as UsartModel } from "../../model/chips/chip.ts";
import type { At } from "../../reader/typed/nodes.ts";
import type { Level } from "../wires/edge.ts";
import type { ChipCore } from "./chip-core.ts";
import type { CycleTask } from "./cycle-events.ts";
import type { Bit, Interrupt } from "./interrupts.ts";
import type { PortPin, Ports } from "./port.ts";
import { UsartReceiver } from "./usart-receiver.ts";

interface Buffered {
  readonly value: number;
  readonly place: At | undefined;
}

/**
 * The transmitter of a USART: one byte in the shift register, one behind it. A frame has the baud, data bits, parity
 * and stop bits that the registers say when its start bit begins; that is the cycle after UDR was written, or after the
 * last stop bit of the frame before. The real chip waits for its free-running baud clock, by less than a sixteenth of a bit.
 * The receiver is in `usart-receiver.ts`.
 */
export class Usart {
  readonly #core: ChipCore;
  readonly #model: UsartModel;
  readonly #pin: PortPin | undefined;
  readonly #task: CycleTask;
  readonly #empty: Interrupt | undefined;
  readonly #sent: Interrupt | undefined;
  readonly #received: Interrupt | undefined;
  readonly #receiver: UsartReceiver;
  readonly #bits: {
    readonly transmit: Bit | undefined;
    readonly doubleSpeed: Bit | undefined;
    readonly ninth: Bit | undefined;
    readonly stop: Bit | undefined;
    readonly size: readonly (Bit | undefined)[];
    readonly parity: readonly (Bit | undefined)[];
    readonly mode: readonly (Bit | undefined)[];
  };
  #waiting: Buffered | undefined;
  /** Levels of the frame on the line, and which of them it is at. */
  #frame: readonly Level[] = [];
  #at = 0;
  #bitCycles = 0;
  #level: Level = 1;
  #isConnected = false;

  constructor(core: ChipCore, ports: Ports, model: UsartModel) {
    this.#core = core;
    this.#model = model;
    this.#pin = ports.pin(model.txPin);
    this.#task = core.events.task(() => this.#nextLevel());
    const suffix = /\d*$/.exec(model.data.name)?.[0] ?? "";
    const bit = (name: string) => core.bit(`${name}${suffix}`);
    const { bits, vectors } = model;
    this.#bits = {
      transmit: core.bitAt(bits.transmitEnable),
      doubleSpeed: core.bitAt(bits.doubleSpeed),
      ninth: bit("TXB8"),
      stop: core.bitAt(bits.stop),
      size: bits.size.map((each) => core.bitAt(each)),
      parity: bits.parity.map((each) => core.bitAt(each)),
      mode: bits.mode.map((each) => core.bitAt(each)),
    };
    const ways = { plainFlag: false, plainEnable: false };
    this.#received = core.interrupt(vectors.receive, bit("RXC"), bit("RXCIE"), {
      clearedBy: "condition",
      ...ways,
    });
    this.#empty = core.interrupt(vectors.empty, bit("UDRE"), bit("UDRIE"), {
      clearedBy: "condition",
      ...ways,
    });
    this.#sent = core.interrupt(vectors.sent, bit("TXC"), bit("TXCIE"), { clearedBy: "taking", ...ways });
    this.#receiver = new UsartReceiver(core, ports.pin(model.rxPin), model, this.#received, () => ({
      bitCycles: this.#cyclesOfBit(),
      dataBits: this.#dataBits(),
      parityCode: core.number(this.#bits.parity),
    }));
    this.#hookRegisters();
    this.reset();
  }

  get isSending(): boolean {
    return this.#frame.length > 0;
  }

  /** Initial values of UCSRnA and UCSRnC in their register descriptions: empty, eight data bits. */
  reset(): void {
    this.#waiting = undefined;
    this.#frame = [];
    this.#level = 1;
    this.#core.events.cancel(this.#task);
    this.#receiver.reset();
    for (const bit of this.#bits.size.slice(1)) this.#core.write(bit, true);
    this.#empty?.raise();
    this.#connect();
  }

  #hookRegisters(): void {
    const { cpu } = this.#core;
    const [a, b] = this.#model.control;
    cpu.writeHooks[a.address] = (value, old, address, mask) => {
      const kept = this.#writableInA();
      cpu.data[address] = (old & ~kept) | (value & kept);
      const flag = this.#sent?.source.flag.mask ?? 0;
      if ((value & mask & flag) !== 0) this.#sent?.clear();
      return true;
    };
    cpu.writeHooks[b.address] = (value, _old, address) => {
      cpu.data[address] = value;
      for (const interrupt of [this.#received, this.#empty, this.#sent]) interrupt?.refresh();
      this.#receiver.refresh();
      this.#connect();
      return true;
    };
    cpu.readHooks[this.#model.data.address] = () => this.#receiver.read();
    cpu.writeHooks[this.#model.data.address] = (value) => {
      this.#write(value);
      return true;
    };
  }

  /** What is not a flag in UCSRnA: U2Xn and MPCMn below it. */
  #writableInA(): number {
    const doubleSpeed = this.#bits.doubleSpeed?.mask ?? 0;
    return doubleSpeed | (doubleSpeed >> 1);
  }

  /** A byte written while the buffer is full, or while the transmitter is off, is lost. */
  #write(value: number): void {
    if (!this.#core.isSet(this.#bits.transmit) || this.#waiting !== undefined) return;
    const ninth = this.#core.isSet(this.#bits.ninth) ? 0x100 : 0;
    this.#waiting = { value: value | ninth, place: this.#core.place };
    this.#empty?.clear();
    if (!this.isSending) this.#start(this.#core.now + 1);
  }

  #start(cycle: number): void {
    const buffered = this.#waiting;
    if (buffered === undefined) return;
    this.#waiting = undefined;
    this.#frame = this.#frameOf(buffered.value);
    this.#at = -1;
    this.#bitCycles = this.#cyclesOfBit();
    this.#task.place = buffered.place;
    this.#core.events.at(this.#task, cycle);
    this.#empty?.raise();
  }

  /** 8 or 16 times UBRR + 1: table "Equations for Calculating Baud Rate Register Setting" of the datasheets. */
  #cyclesOfBit(): number {
    const { data } = this.#core.cpu;
    const { divisorLow, divisorHigh } = this.#model;
    const divisor = ((data[divisorHigh.address] ?? 0) & 0x0f) * 256 + (data[divisorLow.address] ?? 0);
    return (divisor + 1) * (this.#core.isSet(this.#bits.doubleSpeed) ? 8 : 16);
  }

  /** Start bit, data from the lowest on, parity, stop bits. UCSZn and UPMn by their tables; 4 to 6 are reserved. */
  #frameOf(value: number): readonly Level[] {
    const { parity, stop, mode } = this.#bits;
    if (this.#core.number(mode) !== 0) {
      this.#core.tellNotSimulated(`${this.#model.control[2].name}: a mode other than asynchronous`);
    }
    const dataBits = this.#dataBits();
    const levels: Level[] = [0];
    let ones = 0;
    for (let bit = 0; bit < dataBits; bit += 1) {
      const level = (value >> bit) & 1 ? 1 : 0;
      ones += level;
      levels.push(level);
    }
    const parityCode = this.#core.number(parity);
    if (parityCode >= 2) levels.push(((ones + parityCode) & 1) as Level);
    levels.push(1);
    if (this.#core.isSet(stop)) levels.push(1);
    return levels;
  }

  #dataBits(): number {
    const sizeCode = this.#core.number(this.#bits.size);
    return sizeCode === 7 ? 9 : 5 + Math.min(sizeCode, 3);
  }

  /** The next bit begins, or the frame has ended. */
  #nextLevel(): void {
    const { now, events } = this.#core;
    this.#at += 1;
    const level = this.#frame[this.#at];
    if (level !== undefined) {
      this.#level = level;
      this.#show();
      events.at(this.#task, now + this.#bitCycles);
      return;
    }
    this.#frame = [];
    if (this.#waiting === undefined) {
      this.#sent?.raise();
      this.#connect();
    } else {
      this.#start(now);
      // The frame that follows begins without a gap, in this very cycle.
      events.cancel(this.#task);
      this.#core.place = this.#task.place;
      this.#nextLevel();
    }
  }

  /** The transmitter has its pin from when it is switched on until it is off and its last frame has left. */
  #connect(): void {
    const isOn = this.#core.isSet(this.#bits.transmit) || this.isSending;
    if (isOn === this.#isConnected) return;
    this.#isConnected = isOn;
    this.#pin?.port.override(
      this.#pin.bit,
      "usart",
      isOn ? () => (this.#level === 1 ? "high" : "low") : undefined,
    );
  }

  #show(): void {
    this.#pin?.port.refreshPin(this.#pin.bit);
  }
}
