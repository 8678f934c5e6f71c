import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { OutsideBody, Surroundings, TargetMemory } from "../outcome.ts";
import { type Piece, pieceOf } from "./pieces.ts";
import { printedDouble, printedInteger } from "./print-number.ts";
import { StringObject } from "./string-object.ts";
import { ascii, lengthAt, readUnsigned, textAt, writeText, writeUnsigned } from "./target-text.ts";
import { numberAt, unsigned } from "./values.ts";

interface Printer {
  readonly self: number;
  readonly memory: TargetMemory;
  readonly surroundings: Surroundings;
}

/** The object's own function for one byte. */
function writeByte({ self, surroundings }: Printer, byte: number): number {
  return Number(surroundings.callVirtual(self, "write", [byte & 0xff]) ?? 0);
}

/** The object's own function for several bytes. */
function writeBlock({ self, surroundings }: Printer, from: number, size: number): number {
  return Number(surroundings.callVirtual(self, "write", [from, size]) ?? 0);
}

/** Bytes that lie nowhere yet: in a block of their own, or one by one where there is no room for that. */
function writeMade(printer: Printer, bytes: readonly number[]): number {
  const { memory } = printer;
  const block = memory.allocate(bytes.length + 1);
  if (block === 0) return writeEach(printer, bytes);
  writeText(memory, block, bytes);
  const count = writeBlock(printer, block, bytes.length);
  memory.release(block);
  return count;
}

/** One byte after another, up to the first that is not taken. */
function writeEach(printer: Printer, bytes: readonly number[]): number {
  let count = 0;
  for (const byte of bytes) {
    if (writeByte(printer, byte) === 0) break;
    count += 1;
  }
  return count;
}

function printInteger(printer: Printer, value: number, base: number): number {
  if (base === 0) return writeByte(printer, value);
  const isNegative = value < 0 && base === 10;
  const bytes = printedInteger(value, base);
  if (!isNegative) return writeMade(printer, bytes);
  return writeByte(printer, bytes[0] ?? 0) + writeMade(printer, bytes.slice(1));
}

/** Prints one value; `form` is a base or a number of decimals. */
function printPiece(piece: Piece, printer: Printer, value: number, form: number): number {
  const { memory, surroundings, self } = printer;
  switch (piece.kind) {
    case "character":
      return writeByte(printer, value);
    case "integer":
      return printInteger(printer, piece.signed ? value : unsigned(value, piece.bits), form);
    case "floating":
      return writeMade(printer, printedDouble(value, form, surroundings.model));
    case "text":
      return value === 0 ? 0 : writeBlock(printer, value, lengthAt(memory, value));
    case "flash-text":
      return writeEach(printer, textAt(memory, value));
    case "string": {
      const { buffer, length } = new StringObject(value, memory, surroundings);
      return writeBlock(printer, buffer, length);
    }
    case "printable":
      return Number(surroundings.callVirtual(value, "printTo", [self]) ?? 0);
  }
}

const lineEnd = ascii("\r\n");

function printing({ type, name }: FunctionSymbol): OutsideBody | undefined {
  const ending = name === "println" ? lineEnd : [];
  const [first] = type.parameters;
  const piece = pieceOf(first);
  if (first !== undefined && piece === undefined) return undefined;
  return (parameters, memory, surroundings) => {
    const printer = { self: numberAt(parameters, 0), memory, surroundings };
    const count =
      piece === undefined ? 0 : printPiece(piece, printer, numberAt(parameters, 1), numberAt(parameters, 2));
    return ending.length === 0 ? count : count + writeMade(printer, ending);
  };
}

/** The overloads that are not the object's own: a text, or characters by their number. */
function writing({ type }: FunctionSymbol): OutsideBody | undefined {
  const [first, second] = type.parameters;
  if (first?.kind !== "pointer") return undefined;
  const isText = pieceOf(first)?.kind === "text";
  return (parameters, memory, surroundings) => {
    const printer = { self: numberAt(parameters, 0), memory, surroundings };
    const from = numberAt(parameters, 1);
    if (second === undefined) return from === 0 ? 0 : writeBlock(printer, from, lengthAt(memory, from));
    const size = numberAt(parameters, 2);
    if (isText) return writeBlock(printer, from, size);
    // What a class without a function for several bytes inherits.
    let count = 0;
    while (count < size && writeByte(printer, memory.readByte(from + count)) !== 0) count += 1;
    return count;
  };
}

/** Where the error of the last write is kept: behind the pointer to the table of virtual functions. */
function errorAt(self: number, { model }: Surroundings): number {
  return self + model.pointer / 8;
}

const errorFunctions: Readonly<Record<string, OutsideBody>> = {
  getWriteError: (parameters, memory, surroundings) =>
    readUnsigned(memory, errorAt(numberAt(parameters, 0), surroundings), surroundings.model.int / 8),
  clearWriteError: (parameters, memory, surroundings) =>
    setError(numberAt(parameters, 0), 0, memory, surroundings),
  setWriteError: (parameters, memory, surroundings) =>
    setError(numberAt(parameters, 0), numberAt(parameters, 1), memory, surroundings),
};

function setError(self: number, error: number, memory: TargetMemory, surroundings: Surroundings): undefined {
  writeUnsigned(memory, errorAt(self, surroundings), error, surroundings.model.int / 8);
}

/** Member functions of the sketch core's class Print that are not purely virtual. */
export function printMethod(symbol: FunctionSymbol): OutsideBody | undefined {
  switch (symbol.name) {
    case "print":
    case "println":
      return printing(symbol);
    case "write":
      return writing(symbol);
    case "availableForWrite":
      return () => 0;
    case "flush":
      return () => undefined;
    default:
      return Object.hasOwn(errorFunctions, symbol.name) ? errorFunctions[symbol.name] : undefined;
  }
}
