import type { TargetMemory } from "../outcome.ts";

/** Longest text that is read: one without an end would go on for ever. */
const MOST = 0x10000;

/** Characters up to the terminating zero, as `strlen` counts them, at most `most`. */
export function lengthAt(memory: TargetMemory, address: number, most = MOST): number {
  let length = 0;
  while (length < most && memory.readByte(address + length) !== 0) length += 1;
  return length;
}

export function readBytes(memory: TargetMemory, address: number, count: number): number[] {
  return Array.from({ length: count }, (_, index) => memory.readByte(address + index));
}

export function writeBytes(memory: TargetMemory, address: number, bytes: readonly number[]): void {
  bytes.forEach((byte, index) => {
    memory.writeByte(address + index, byte & 0xff);
  });
}

/** The bytes of a text without its terminating zero. */
export function textAt(memory: TargetMemory, address: number): number[] {
  return readBytes(memory, address, lengthAt(memory, address));
}

/** Writes a text and its terminating zero. */
export function writeText(memory: TargetMemory, address: number, bytes: readonly number[]): void {
  writeBytes(memory, address, bytes);
  memory.writeByte(address + bytes.length, 0);
}

/** The bytes of a text of ASCII characters. */
export function ascii(text: string): number[] {
  return Array.from(text, (character) => character.charCodeAt(0));
}

/** An unsigned integer of this many bytes (at most 4), little-endian. */
export function readUnsigned(memory: TargetMemory, address: number, bytes: number): number {
  let value = 0;
  for (let index = bytes - 1; index >= 0; index -= 1) value = value * 256 + memory.readByte(address + index);
  return value;
}

export function writeUnsigned(memory: TargetMemory, address: number, value: number, bytes: number): void {
  for (let index = 0; index < bytes; index += 1)
    memory.writeByte(address + index, (value >>> (8 * index)) & 0xff);
}
