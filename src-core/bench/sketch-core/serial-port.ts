import type { AvrChip, Usart } from "../../model/chips/chip.ts";
import type { At } from "../../reader/typed/nodes.ts";
import { globalFlag, statusRegister } from "../chip/status-register.ts";
import type { HandlerBody } from "../engines/interpreter-engine.ts";
import { type Access, HandlerAccess } from "./access.ts";
import type { BufferSizes } from "./buffer-sizes.ts";
import { ByteRing } from "./byte-ring.ts";
import type { CoreHandlers } from "./core-function.ts";
import { functionCycles, handlerCycles, turnCycles } from "./function-cycles.ts";
import { usualVectorName } from "./registers.ts";

/** Masks of bits in UCSRnA and UCSRnB. */
interface Masks {
  readonly sent: number;
  readonly empty: number;
  readonly parityError: number;
  /** U2X and MPCM, which stay as they are when TXC is cleared. */
  readonly kept: number;
  readonly doubleSpeed: number;
  readonly receive: number;
  readonly transmit: number;
  readonly receiveInterrupt: number;
  readonly emptyInterrupt: number;
}

/** A USART as the core's class drives it: `HardwareSerial.cpp`, `HardwareSerial_private.h`. */
export class SerialPort {
  readonly #usart: Usart;
  readonly #clockHz: number;
  readonly #masks: Masks;
  readonly #received: ByteRing;
  readonly #toSend: ByteRing;
  /** Who wrote each byte that waits. */
  readonly #writers: (At | undefined)[] = [];
  #written = false;

  /** `clockHz` is F_CPU. */
  constructor(usart: Usart, clockHz: number, { receive, transmit }: BufferSizes) {
    this.#usart = usart;
    this.#clockHz = clockHz;
    this.#masks = masksOf(usart);
    this.#received = new ByteRing(receive);
    this.#toSend = new ByteRing(transmit);
  }

  handlers(model: AvrChip): CoreHandlers {
    const { receive, empty } = this.#usart.vectors;
    return new Map([
      [usualVectorName(model, receive), this.#receiveHandler],
      [usualVectorName(model, empty), this.#emptyHandler],
    ]);
  }

  /** `config` is what goes to UCSRnC; `baud` 1 or more. */
  begin(baud: number, config: number, access: Access): void {
    const [a, b, c] = this.#usart.control;
    const { doubleSpeed, receive, transmit, receiveInterrupt, emptyInterrupt } = this.#masks;
    access.wait(functionCycles.serialBegin.before);
    let divisor = Math.floor((Math.floor(Math.floor(this.#clockHz / 4) / baud) - 1) / 2) & 0xffff;
    access.write(a.address, doubleSpeed);
    if ((this.#clockHz === 16_000_000 && baud === 57_600) || divisor > 4095) {
      access.write(a.address, 0);
      divisor = Math.floor((Math.floor(Math.floor(this.#clockHz / 8) / baud) - 1) / 2) & 0xffff;
    }
    access.write(this.#usart.divisorHigh.address, divisor >> 8);
    access.write(this.#usart.divisorLow.address, divisor & 0xff);
    this.#written = false;
    access.write(c.address, config);
    access.change(b.address, 0, receive);
    access.change(b.address, 0, transmit);
    access.change(b.address, 0, receiveInterrupt);
    access.change(b.address, emptyInterrupt, 0);
    access.wait(functionCycles.serialBegin.after);
  }

  end(access: Access): void {
    const { receive, transmit, receiveInterrupt, emptyInterrupt } = this.#masks;
    this.flush(access);
    access.wait(functionCycles.serialEnd.before);
    access.change(this.#usart.control[1].address, receive | transmit | receiveInterrupt | emptyInterrupt, 0);
    this.#received.clear();
    access.wait(functionCycles.serialEnd.after);
  }

  /** Bytes received and not read yet. */
  available(): number {
    return this.#received.length;
  }

  peek(): number {
    return this.#received.first ?? -1;
  }

  read(): number {
    return this.#received.take() ?? -1;
  }

  /** Bytes that `write` takes without waiting. */
  availableForWrite(): number {
    return this.#toSend.room;
  }

  write(byte: number, access: Access): void {
    const [a, b] = this.#usart.control;
    this.#written = true;
    const { before, after } = functionCycles.writeToRegister;
    if (this.#toSend.isEmpty && (access.read(a.address) & this.#masks.empty) !== 0) {
      access.wait(before);
      this.#put(byte, access);
      access.wait(after);
      return;
    }
    access.wait(functionCycles.writeToBuffer.before);
    if (this.#toSend.isFull) this.#waitForRoom(access);
    this.#toSend.put(byte);
    this.#writers.push(access.place);
    access.change(b.address, 0, this.#masks.emptyInterrupt);
    access.wait(functionCycles.writeToBuffer.after);
  }

  /** Waits until the last bit has left. */
  flush(access: Access): void {
    const [a, b] = this.#usart.control;
    access.wait(functionCycles.flush.before);
    while (this.#written) {
      const isWaiting = (access.read(b.address) & this.#masks.emptyInterrupt) !== 0;
      const status = access.read(a.address);
      if (!isWaiting && (status & this.#masks.sent) !== 0) break;
      if (isWaiting && (status & this.#masks.empty) !== 0 && !interruptsOn(access)) this.#sendNext(access);
      access.waitTurns(turnCycles.flush, Number.POSITIVE_INFINITY);
    }
    access.wait(functionCycles.flush.after);
  }

  /** With interrupts off it does the handler's work itself. */
  #waitForRoom(access: Access): void {
    while (this.#toSend.isFull) {
      const isFree = (access.read(this.#usart.control[0].address) & this.#masks.empty) !== 0;
      if (isFree && !interruptsOn(access)) this.#sendNext(access);
      else access.waitTurns(turnCycles.waitForRoom, Number.POSITIVE_INFINITY);
    }
  }

  /** A byte to the data register; TXC is cleared by writing 1 to it. */
  #put(byte: number, access: Access): void {
    const [a] = this.#usart.control;
    access.write(this.#usart.data.address, byte);
    access.write(a.address, (access.read(a.address) & this.#masks.kept) | this.#masks.sent);
  }

  #sendNext(access: Access): void {
    const here = access.place;
    access.actFor(this.#writers.shift());
    this.#put(this.#toSend.take() ?? 0, access);
    access.actFor(here);
    if (this.#toSend.isEmpty) access.change(this.#usart.control[1].address, this.#masks.emptyInterrupt, 0);
  }

  readonly #emptyHandler: HandlerBody = ({ chip }) => {
    const access = new HandlerAccess(chip);
    access.wait(handlerCycles.registerEmpty.before);
    this.#sendNext(access);
    access.wait(handlerCycles.registerEmpty.after);
    return undefined;
  };

  /** A byte with a parity error is thrown away, and so is one for which there is no room. */
  readonly #receiveHandler: HandlerBody = ({ chip }) => {
    const access = new HandlerAccess(chip);
    access.wait(handlerCycles.received.before);
    const isWrong = (access.read(this.#usart.control[0].address) & this.#masks.parityError) !== 0;
    const byte = access.read(this.#usart.data.address);
    if (!isWrong && !this.#received.isFull) this.#received.put(byte);
    access.wait(handlerCycles.received.after);
    return undefined;
  };
}

function interruptsOn(access: Access): boolean {
  return (access.read(statusRegister) & globalFlag) !== 0;
}

function masksOf({ number, control: [a, b] }: Usart): Masks {
  const mask = (name: string): number => {
    const names = [`${name}${number}`, name];
    const found = [...a.bits, ...b.bits].find((bit) => names.includes(bit.name));
    return found === undefined ? 0 : 1 << found.bit;
  };
  return {
    sent: mask("TXC"),
    empty: mask("UDRE"),
    parityError: mask("UPE"),
    kept: mask("U2X") | mask("MPCM"),
    doubleSpeed: mask("U2X"),
    receive: mask("RXEN"),
    transmit: mask("TXEN"),
    receiveInterrupt: mask("RXCIE"),
    emptyInterrupt: mask("UDRIE"),
  };
}
