import { library } from "../../../../src-core/interpreter/library/library.ts";
import type { Surroundings, TargetMemory } from "../../../../src-core/interpreter/outcome.ts";
import { chip } from "../../../../src-core/model/chips.ts";
import { ProgramCache } from "../../../../src-core/reader/program/program-cache.ts";
import { readProgram } from "../../../../src-core/reader/program/read-program.ts";
import { hostOfFiles } from "../../../../src-core/reader/source-host.ts";
import { compilerFunction } from "../../../../src-core/reader/typed/compiler-functions.ts";
import type { FunctionSymbol } from "../../../../src-core/reader/typed/nodes.ts";
import { avrModel } from "../../../../src-core/reader/types/data-models.ts";
import { typeText } from "../../../../src-core/reader/types/text.ts";
import { grammar } from "../../reader/typed/type-source.ts";

type Value = number | bigint;
type Virtual = (self: number, name: string, parameters: readonly Value[]) => Value | undefined;
type Pointer = (pointer: number, parameters: readonly Value[]) => Value | undefined;

/** Memory of plain bytes; a heap that never gives a block twice. */
class PlainMemory implements TargetMemory {
  readonly #bytes = new Uint8Array(0x10000);
  readonly #blocks = new Map<number, number>();
  #next = 0x1000;
  /** Blocks are refused from this address on. */
  heapEnd = 0xf000;

  readByte(address: number): number {
    return this.#bytes[address & 0xffff] ?? 0;
  }
  writeByte(address: number, value: number): void {
    this.#bytes[address & 0xffff] = value;
  }
  allocate(bytes: number): number {
    if (this.#next + bytes > this.heapEnd) return 0;
    const block = this.#next;
    this.#next += bytes + 1;
    this.#blocks.set(block, bytes);
    return block;
  }
  release(address: number): void {
    this.#blocks.delete(address);
  }
  allocatedAt(address: number): number {
    return this.#blocks.get(address) ?? 0;
  }
}

const read = new Map<string, Promise<readonly FunctionSymbol[]>>();

async function functionsOf(headers: readonly string[]): Promise<readonly FunctionSymbol[]> {
  const main = headers.some((header) => header === "Arduino.h") ? "main.cpp" : "main.c";
  const program = readProgram({
    host: hostOfFiles({ [main]: headers.map((header) => `#include <${header}>\n`).join("") }),
    units: [{ mains: [main], language: main === "main.c" ? "c" : "c++", prelude: [] }],
    chip: chip("atmega1284p"),
    clockHz: 16_000_000,
    defines: new Map(),
    includePaths: [],
    grammar: await grammar(),
    cache: new ProgramCache(),
  });
  return program.units.flatMap(({ typed }) => typed.functions);
}

/** Library functions by name, or by `name(types)` where there are several, with a memory of their own. */
export class LibraryTarget {
  readonly memory = new PlainMemory();
  readonly #functions: readonly FunctionSymbol[];
  readonly #surroundings: Surroundings;
  callVirtual: Virtual = () => undefined;
  callPointer: Pointer = () => undefined;
  /** Cycles that went by. */
  waited = 0;
  readonly globals = new Map<string, number>();
  #next = 0x200;

  constructor(functions: readonly FunctionSymbol[]) {
    this.#functions = functions;
    this.#surroundings = {
      refuse: (what) => {
        throw new Error(`cannot run: ${what}`);
      },
      callVirtual: (...call) => this.callVirtual(...call),
      callPointer: (...call) => this.callPointer(...call),
      addressOf: (name) => this.globals.get(name),
      model: avrModel,
      wait: (cycles) => {
        this.waited += cycles;
      },
      instruct: () => {},
      chip: undefined,
      clockHz: 16_000_000,
      changed: () => undefined,
      settle: () => undefined,
      place: () => undefined,
      kept: new Map(),
    };
  }

  /** Calls with numbers as they are and texts placed in memory. */
  call(name: string, ...given: readonly (Value | string)[]): Value | undefined {
    const body = library(this.symbol(name));
    if (body === undefined) throw new Error(`no body for ${name}`);
    const parameters = given.map((value) => (typeof value === "string" ? this.place(value) : value));
    return body(parameters, this.memory, this.#surroundings);
  }

  symbol(name: string): FunctionSymbol {
    const wanted = name.replaceAll(" ", "");
    const found = this.#functions.find((symbol) => {
      const types = symbol.type.parameters.map((type) => typeText(type)).join(",");
      return (
        wanted === symbol.qualifiedName.replaceAll(" ", "") ||
        wanted === `${symbol.qualifiedName}(${types})`.replaceAll(" ", "")
      );
    });
    const meant = found ?? compilerFunction(avrModel, name);
    if (meant === undefined) throw new Error(`${name} is not declared`);
    return meant;
  }

  /** Room that nothing else uses. */
  room(bytes: number): number {
    const address = this.#next;
    this.#next += bytes;
    return address;
  }

  place(text: string): number {
    const address = this.room(text.length + 1);
    for (let index = 0; index < text.length; index += 1) {
      this.memory.writeByte(address + index, text.charCodeAt(index));
    }
    this.memory.writeByte(address + text.length, 0);
    return address;
  }

  bytes(address: number, count: number): readonly number[] {
    return Array.from({ length: count }, (_, index) => this.memory.readByte(address + index));
  }

  text(address: number): string {
    let text = "";
    for (let at = address; this.memory.readByte(at) !== 0; at += 1) {
      text += String.fromCharCode(this.memory.readByte(at));
    }
    return text;
  }
}

const C_HEADERS = "string stdlib ctype math stdio avr/pgmspace util/crc16 util/parity".split(" ");

/** What the headers of the C library and avr-libc declare. */
export async function cLibrary(): Promise<LibraryTarget> {
  return targetOf(C_HEADERS.map((name) => `${name}.h`));
}

/** What the header of the sketch core declares. */
export async function sketchLibrary(): Promise<LibraryTarget> {
  return targetOf(["Arduino.h"]);
}

async function targetOf(headers: readonly string[]): Promise<LibraryTarget> {
  const key = headers.join();
  const functions = read.get(key) ?? functionsOf(headers);
  read.set(key, functions);
  return new LibraryTarget(await functions);
}
