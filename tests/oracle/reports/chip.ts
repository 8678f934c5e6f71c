import { CPU } from "avr8js";
import { step } from "../../../src-core/bench/engines/avr-step.ts";
import { compile } from "../interpreter/compile.ts";
import { serialPort, targetOf } from "../interpreter/source-program.ts";
import { places, withDriver } from "./driver.ts";
import type { NotedFunction } from "./noted-function.ts";

/** General-purpose I/O registers 0 to 2 in data space: register summaries of the ATmega328P and ATmega1284P. */
const gpior = [0x3e, 0x4a, 0x4b] as const;

const flashBytes = 128 * 1024;
const cycleLimit = 100_000;

/** What one call of a snippet's function did. */
export interface Call {
  /** Bytes written to the USART. */
  readonly sent: readonly number[];
  /** The watched array afterwards, as far as the call wrote it from its start without a gap. */
  readonly written: readonly number[];
  /** Bytes of the array that were written in all, with those behind a gap. */
  readonly writtenCount: number;
  readonly returned: number;
  /** What the driver told, four bytes a value. */
  readonly told: readonly number[];
}

/** A snippet's function, compiled for an AVR and run on a simulated one. */
export class Chip {
  readonly #cpu: CPU;
  readonly #input: number[] = [];
  #told: number[] = [];
  #sent: number[] = [];
  #place = 0;
  readonly #array: number;
  readonly #arrayBytes: number;

  private constructor(cpu: CPU) {
    this.#cpu = cpu;
    const [input, place, output] = gpior;
    cpu.readHooks[input] = () => this.#input.shift() ?? 0;
    cpu.writeHooks[place] = (value) => {
      this.#place = value;
    };
    cpu.writeHooks[output] = (value) => {
      this.#told.push(value);
    };
    cpu.readHooks[serialPort.status] = () => serialPort.ready;
    cpu.writeHooks[serialPort.data] = (value) => {
      this.#sent.push(value);
    };
    this.#runTo(places.ready);
    const [array = 0, arrayBytes = 0] = values(this.#told);
    this.#array = array;
    this.#arrayBytes = arrayBytes;
  }

  /** Throws where it does not compile, with the compiler's words. */
  static async with(subject: NotedFunction): Promise<Chip> {
    const program = withDriver(subject);
    const image = await compile(program);
    if (image.kind === "not-compiled") throw new Error(`${image.message}\n${program.text}`);
    const flash = new Uint8Array(flashBytes);
    flash.set(image.flash);
    return new Chip(new CPU(new Uint16Array(flash.buffer), targetOf(program).ramBytes));
  }

  call(inputs: readonly number[]): Call {
    this.#told = [];
    this.#sent = [];
    for (const value of inputs) for (const shift of [0, 8, 16, 24]) this.#input.push((value >> shift) & 0xff);
    this.#runTo(places.before);
    const touched = new Set<number>();
    for (let index = 0; index < this.#arrayBytes; index += 1) {
      this.#cpu.writeHooks[this.#array + index] = () => {
        touched.add(index);
      };
    }
    this.#runTo(places.after);
    for (let index = 0; index < this.#arrayBytes; index += 1)
      delete this.#cpu.writeHooks[this.#array + index];
    const written: number[] = [];
    while (touched.has(written.length)) written.push(this.#cpu.data[this.#array + written.length] ?? 0);
    this.#runTo(places.done);
    const told = values(this.#told);
    return { sent: this.#sent, written, writtenCount: touched.size, returned: told[0] ?? 0, told };
  }

  #runTo(place: number): void {
    const limit = this.#cpu.cycles + cycleLimit;
    this.#place = 0;
    while (this.#place !== place) {
      step(this.#cpu);
      if (this.#cpu.cycles > limit) throw new Error(`runs on after ${cycleLimit} cycles`);
    }
  }
}

/** Little-endian 32-bit values. */
function values(bytes: readonly number[]): number[] {
  const found: number[] = [];
  for (let at = 0; at + 3 < bytes.length; at += 4) {
    const [a = 0, b = 0, c = 0, d = 0] = bytes.slice(at, at + 4);
    found.push(a | (b << 8) | (c << 16) | (d << 24));
  }
  return found;
}
