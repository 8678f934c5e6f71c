import type { TargetMemory } from "../outcome.ts";
import { readBytes, writeBytes } from "./target-text.ts";
import { numberAt, type Subject } from "./values.ts";

/** Difference of the first two bytes that differ, as avr-libc's comparisons give it; 0 for none. */
export function compareBytes(memory: TargetMemory, left: number, right: number, count: number): number {
  for (let index = 0; index < count; index += 1) {
    const difference = memory.readByte(left + index) - memory.readByte(right + index);
    if (difference !== 0) return difference;
  }
  return 0;
}

/** Copies as if through a buffer, so that overlapping objects come out right. */
export function moveBytes(memory: TargetMemory, to: number, from: number, count: number): void {
  writeBytes(memory, to, readBytes(memory, from, count));
}

/** The mem functions of C11 7.24. */
export const memoryFunctions: Subject = {
  memcpy(parameters, memory) {
    const to = numberAt(parameters, 0);
    const from = numberAt(parameters, 1);
    const count = numberAt(parameters, 2);
    for (let index = 0; index < count; index += 1) {
      memory.writeByte(to + index, memory.readByte(from + index));
    }
    return to;
  },
  memmove(parameters, memory) {
    const to = numberAt(parameters, 0);
    moveBytes(memory, to, numberAt(parameters, 1), numberAt(parameters, 2));
    return to;
  },
  memset(parameters, memory) {
    const to = numberAt(parameters, 0);
    const value = numberAt(parameters, 1) & 0xff;
    const count = numberAt(parameters, 2);
    for (let index = 0; index < count; index += 1) memory.writeByte(to + index, value);
    return to;
  },
  memcmp: (parameters, memory) =>
    compareBytes(memory, numberAt(parameters, 0), numberAt(parameters, 1), numberAt(parameters, 2)),
  memchr(parameters, memory) {
    const from = numberAt(parameters, 0);
    const value = numberAt(parameters, 1) & 0xff;
    const count = numberAt(parameters, 2);
    for (let index = 0; index < count; index += 1) {
      if (memory.readByte(from + index) === value) return from + index;
    }
    return 0;
  },
};
