import type { DataModel } from "../../reader/types/types.ts";
import { Halt } from "./halt.ts";

/** What a byte of the target's memory is; those of `shared` ones are read and written one by one. */
export const byteState = {
  none: 0,
  uninitialized: 1,
  ready: 3,
  register: 4,
  watched: 5,
  shared: 6,
} as const;

/** Registers and the memory of an AVR, as far as 16 bits reach; 1 MiB on the 32-bit targets. */
function memoryBytes(model: DataModel): number {
  return model.pointer === 16 ? 0x1_0000 : 0x10_0000;
}

/** Objects at file level begin here: beyond the registers of every AVR in the chip tables. */
const firstObject = 0x200;

/** Objects at file level and the heap at one moment. */
export interface SavedMemory {
  readonly statics: Uint8Array;
  /** Objects at file level that were placed since, as they were then. */
  readonly later: { readonly address: number; readonly bytes: Uint8Array }[];
  readonly heap: Uint8Array;
  readonly heapStates: Uint8Array;
  readonly heapEnd: number;
  readonly blocks: ReadonlyMap<number, number>;
  readonly free: ReadonlyMap<number, readonly number[]>;
}

/**
 * The target's memory: bytes, what each of them is, and which place in the source wrote it last. Objects at file
 * level grow upwards in the lower half, the heap in the upper one, the stack down from the end. Between two objects
 * a byte is left free, so that whoever steps over the end of one is noticed.
 */
export class Memory {
  readonly bytes: Uint8Array;
  readonly states: Uint8Array;
  /** Numbers of places in the source; 0 for none. */
  readonly writers: Int32Array;
  /** What was written to watched bytes, in order. */
  readonly written: { readonly address: number; readonly value: number; readonly place: number }[] = [];
  #staticEnd = firstObject;
  #heapEnd: number;
  readonly #blocks = new Map<number, number>();
  readonly #free = new Map<number, number[]>();
  stackPointer: number;

  constructor(model: DataModel) {
    const size = memoryBytes(model);
    this.bytes = new Uint8Array(size + 8);
    this.states = new Uint8Array(size + 8);
    this.writers = new Int32Array(size + 8);
    this.#heapEnd = size / 2;
    this.stackPointer = size;
  }

  get size(): number {
    return this.bytes.length - 8;
  }

  /** Makes everything as it is after power-up: objects at file level are zero, the heap and the stack are empty. */
  clear(): void {
    this.bytes.fill(0);
    this.writers.fill(0);
    this.states.fill(byteState.none, this.#staticEnd);
    this.#heapEnd = this.size / 2;
    this.#blocks.clear();
    this.#free.clear();
    this.stackPointer = this.size;
  }

  /** From now on every write to these bytes is listed in `written`. They may be read. */
  watch(address: number, bytes: number): void {
    this.states.fill(byteState.watched, address, address + bytes);
  }

  /** From now on these bytes of one number are read and written one after the other. */
  share(address: number, bytes: number): void {
    this.states.fill(byteState.shared, address, address + bytes);
  }

  /** What `restore` needs to make objects at file level and the heap as they are now. */
  save(): SavedMemory {
    const { bytes, states } = this;
    const heapStart = this.size / 2;
    return {
      statics: bytes.slice(firstObject, this.#staticEnd),
      later: [],
      heap: bytes.slice(heapStart, this.#heapEnd),
      heapStates: states.slice(heapStart, this.#heapEnd),
      heapEnd: this.#heapEnd,
      blocks: new Map(this.#blocks),
      free: new Map([...this.#free].map(([size, list]) => [size, [...list]])),
    };
  }

  restore(saved: SavedMemory): void {
    const heapStart = this.size / 2;
    this.bytes.set(saved.statics, firstObject);
    for (const { address, bytes } of saved.later) this.bytes.set(bytes, address);
    if (saved.heap.length > 0) this.bytes.set(saved.heap, heapStart);
    this.states.set(saved.heapStates, heapStart);
    this.states.fill(byteState.none, saved.heapEnd, Math.max(saved.heapEnd, this.#heapEnd));
    this.#heapEnd = saved.heapEnd;
    this.#blocks.clear();
    for (const [address, size] of saved.blocks) this.#blocks.set(address, size);
    this.#free.clear();
    for (const [size, list] of saved.free) this.#free.set(size, [...list]);
  }

  markRegisters(from: number, to: number): void {
    this.states.fill(byteState.register, from, to);
  }

  /** Room for an object at file level, zero at first. */
  placeStatic(bytes: number, alignment: number): number {
    const address = Math.ceil(this.#staticEnd / alignment) * alignment;
    if (address + bytes + 1 > this.size / 2) {
      throw new Halt("memory", `no memory left for an object of ${bytes} bytes`, undefined);
    }
    this.#staticEnd = address + bytes + 1;
    this.states.fill(byteState.ready, address, address + bytes);
    return address;
  }

  /** Room on the heap; 0 where there is none. */
  allocate(bytes: number): number {
    const room = Math.max(bytes, 1);
    const again = this.#free.get(room)?.pop();
    const address = again ?? Math.ceil(this.#heapEnd / 8) * 8;
    if (again === undefined) {
      if (address + room + 1 > this.stackPointer) return 0;
      this.#heapEnd = address + room + 1;
    }
    this.#blocks.set(address, bytes);
    this.states.fill(byteState.uninitialized, address, address + bytes);
    return address;
  }

  /** Bytes of the block that begins here; 0 for none. */
  allocatedAt(address: number): number {
    return this.#blocks.get(address) ?? 0;
  }

  release(address: number): void {
    const bytes = this.#blocks.get(address);
    if (bytes === undefined) return;
    this.#blocks.delete(address);
    this.states.fill(byteState.none, address, address + bytes);
    const room = Math.max(bytes, 1);
    const list = this.#free.get(room);
    if (list === undefined) this.#free.set(room, [address]);
    else list.push(address);
  }

  /** Where a frame of so many bytes begins. */
  enter(bytes: number): number {
    const address = this.stackPointer - bytes;
    if (address <= this.#heapEnd)
      throw new Halt("memory", "the stack reached the other objects: no memory left", undefined);
    this.states.fill(byteState.uninitialized, address, this.stackPointer);
    this.stackPointer = address;
    return address;
  }

  leave(bytes: number): void {
    this.states.fill(byteState.none, this.stackPointer, this.stackPointer + bytes);
    this.stackPointer += bytes;
  }
}
