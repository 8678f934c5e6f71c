import type { TargetMemory } from "../../interpreter/outcome.ts";
import { sizeOf } from "../../reader/types/layout.ts";
import type { DataModel, Type } from "../../reader/types/types.ts";

/** Where a value goes into a function, or comes out of it. */
export type Cell =
  /** The argument itself, by position. */
  | { readonly kind: "argument"; readonly index: number; readonly type: Type }
  | {
      readonly kind: "memory";
      readonly address: number;
      readonly type: Type;
      /** Bytes from `address` on that may be watched for writes to it: its own, and what is free behind them. */
      readonly room: number;
      /** Undefined but for bit-fields: the first bit, counted from the lowest of the byte at `address`. */
      readonly bits: { readonly from: number; readonly width: number } | undefined;
    };

/** How many bits a cell holds, and whether they have a sign; undefined for what is no whole number. */
export function integerShape(
  cell: Cell,
  model: DataModel,
): { readonly bits: number; readonly signed: boolean; readonly truth: boolean } | undefined {
  const { type } = cell;
  const integer = type.kind === "enumeration" ? type.enumeration.underlying : type;
  if (integer.kind !== "integer" || integer.bits > 32) return undefined;
  const bits = cell.kind === "memory" && cell.bits !== undefined ? cell.bits.width : sizeInBits(type, model);
  return { bits, signed: integer.signed, truth: integer.rank === "bool" };
}

function sizeInBits(type: Type, model: DataModel): number {
  return 8 * (sizeOf(type, model) ?? 1);
}

/** Writes a whole number to a cell in memory; bits beyond it are left as they are. */
export function writeCell(
  memory: TargetMemory,
  cell: Extract<Cell, { kind: "memory" }>,
  value: number,
  model: DataModel,
): void {
  const from = cell.bits?.from ?? 0;
  const width = cell.bits?.width ?? sizeInBits(cell.type, model);
  for (let bit = 0; bit < width; bit += 1) {
    const address = cell.address + ((from + bit) >> 3);
    const mask = 1 << ((from + bit) & 7);
    const isSet = Math.floor(value / 2 ** bit) % 2 !== 0;
    const byte = memory.readByte(address);
    memory.writeByte(address, isSet ? byte | mask : byte & ~mask);
  }
}

/** The whole number that a cell in memory holds. */
export function readCell(
  memory: TargetMemory,
  cell: Extract<Cell, { kind: "memory" }>,
  model: DataModel,
): number {
  const from = cell.bits?.from ?? 0;
  const shape = integerShape(cell, model);
  const width = shape?.bits ?? 8;
  let value = 0;
  for (let bit = 0; bit < width; bit += 1) {
    const byte = memory.readByte(cell.address + ((from + bit) >> 3));
    if (((byte >> ((from + bit) & 7)) & 1) === 1) value += 2 ** bit;
  }
  return shape?.signed === true && value >= 2 ** (width - 1) ? value - 2 ** width : value;
}
