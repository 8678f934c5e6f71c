import type { TargetMemory } from "../outcome.ts";
import { moveBytes } from "./memory-functions.ts";
import { numberAt, type Subject, unsigned } from "./values.ts";

/** Moves a block to one of another size; 0, the old one still there, where there is no room. */
export function reallocate(memory: TargetMemory, block: number, bytes: number): number {
  if (block === 0) return memory.allocate(bytes);
  const held = memory.allocatedAt(block);
  if (bytes <= held) return block;
  const to = memory.allocate(bytes);
  if (to === 0) return 0;
  moveBytes(memory, to, block, held);
  memory.release(block);
  return to;
}

/** Memory management: C11 7.22.3. */
export const heapFunctions: Subject = {
  malloc: (parameters, memory) => memory.allocate(Math.max(1, numberAt(parameters, 0))),
  calloc(parameters, memory, { model }) {
    const bytes = unsigned(Math.imul(numberAt(parameters, 0), numberAt(parameters, 1)), model.int);
    const block = memory.allocate(Math.max(1, bytes));
    if (block !== 0) for (let index = 0; index < bytes; index += 1) memory.writeByte(block + index, 0);
    return block;
  },
  realloc: (parameters, memory) =>
    reallocate(memory, numberAt(parameters, 0), Math.max(1, numberAt(parameters, 1))),
  free(parameters, memory) {
    const block = numberAt(parameters, 0);
    if (block !== 0) memory.release(block);
    return undefined;
  },
};
