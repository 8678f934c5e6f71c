import type { DataModel } from "../../reader/types/types.ts";
import type { OutsideBody, Surroundings, TargetMemory } from "../outcome.ts";
import { readUnsigned, textAt, writeText, writeUnsigned } from "./target-text.ts";
import { numberAt, type Subject } from "./values.ts";

/** Where the members of FILE lie that are used here: as stdio.h declares it. */
interface StreamLayout {
  readonly flags: number;
  readonly length: number;
  readonly put: number;
  readonly get: number;
}

function layoutIn({ name }: DataModel): StreamLayout {
  return name === "avr"
    ? { flags: 3, length: 6, put: 8, get: 10 }
    : { flags: 5, length: 12, put: 16, get: 20 };
}

const READ = 0x01;
const WRITE = 0x02;
const EOF = -1;

/** The stream that a variable such as `stdout` points to; 0 for none. */
export function streamNamed(name: string, memory: TargetMemory, { addressOf, model }: Surroundings): number {
  const variable = addressOf(name);
  return variable === undefined ? 0 : readUnsigned(memory, variable, model.pointer / 8);
}

function isOpen(stream: number, mode: number, memory: TargetMemory, { model }: Surroundings): boolean {
  return stream !== 0 && (memory.readByte(stream + layoutIn(model).flags) & mode) !== 0;
}

/** Puts each character with the stream's own function; how many of them it took, or EOF. */
export function putAll(
  stream: number,
  bytes: readonly number[],
  memory: TargetMemory,
  surroundings: Surroundings,
): number {
  const { callPointer, model } = surroundings;
  if (!isOpen(stream, WRITE, memory, surroundings)) return EOF;
  const { put, length } = layoutIn(model);
  const pointer = readUnsigned(memory, stream + put, model.pointer / 8);
  let count = 0;
  for (const byte of bytes) {
    const character = model.charSigned ? (byte << 24) >> 24 : byte;
    if (Number(callPointer(pointer, [character, stream]) ?? 0) === 0) count += 1;
  }
  writeUnsigned(memory, stream + length, count, model.int / 8);
  return count;
}

function getOne(stream: number, memory: TargetMemory, surroundings: Surroundings): number {
  const { callPointer, model } = surroundings;
  if (!isOpen(stream, READ, memory, surroundings)) return EOF;
  const pointer = readUnsigned(memory, stream + layoutIn(model).get, model.pointer / 8);
  const character = Number(callPointer(pointer, [stream]) ?? EOF);
  return character < 0 ? EOF : character & 0xff;
}

type Where = (...call: Parameters<OutsideBody>) => number;

const stdout: Where = (_parameters, memory, surroundings) => streamNamed("stdout", memory, surroundings);
const stdin: Where = (_parameters, memory, surroundings) => streamNamed("stdin", memory, surroundings);
const at =
  (index: number): Where =>
  (parameters) =>
    numberAt(parameters, index);

function putCharacter(where: Where): OutsideBody {
  return (parameters, memory, surroundings) => {
    const byte = numberAt(parameters, 0) & 0xff;
    const stream = where(parameters, memory, surroundings);
    return putAll(stream, [byte], memory, surroundings) === 1 ? byte : EOF;
  };
}

function putText(where: Where, end: readonly number[]): OutsideBody {
  return (parameters, memory, surroundings) => {
    const text = [...textAt(memory, numberAt(parameters, 0)), ...end];
    const count = putAll(where(parameters, memory, surroundings), text, memory, surroundings);
    return count === text.length ? 0 : EOF;
  };
}

/** Characters and lines over streams of the author's own functions: C11 7.21.7. */
export const streamFunctions: Subject = {
  putchar: putCharacter(stdout),
  fputc: putCharacter(at(1)),
  puts: putText(stdout, [0x0a]),
  fputs: putText(at(1), []),
  getchar: (parameters, memory, surroundings) =>
    getOne(stdin(parameters, memory, surroundings), memory, surroundings),
  fgetc: (parameters, memory, surroundings) => getOne(numberAt(parameters, 0), memory, surroundings),
  fgets(parameters, memory, surroundings) {
    const line: number[] = [];
    while (line.length < numberAt(parameters, 1) - 1 && line.at(-1) !== 0x0a) {
      const byte = getOne(numberAt(parameters, 2), memory, surroundings);
      if (byte === EOF) break;
      line.push(byte);
    }
    if (line.length === 0) return 0;
    writeText(memory, numberAt(parameters, 0), line);
    return numberAt(parameters, 0);
  },
};
