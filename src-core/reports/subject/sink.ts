import type { Machine } from "../../interpreter/machine.ts";
import type { InsteadBody, TargetMemory } from "../../interpreter/outcome.ts";
import type { At, FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { DataModel } from "../../reader/types/types.ts";
import type { Cell } from "./cell.ts";
import { NotTried } from "./not-tried.ts";

/** One value that a byte of the report was given. */
export interface ByteWritten {
  readonly byte: number;
  readonly value: number;
  readonly at: At | undefined;
}

/** Where the bytes of a report go, and what arrived there. */
export interface Sink {
  /** Forgets what came before. */
  empty(): void;
  /** Puts back what a report left behind, where it is built in an object. */
  hold(bytes: readonly number[]): void;
  /** In the order of the bytes; every value that each had on the way. */
  taken(): { readonly bytes: readonly number[]; readonly written: readonly ByteWritten[] };
}

/** Bytes beyond the report that are watched too: an encoder may write too many. */
const beyond = 4;

/** An array or object that the report is built in. */
export function objectSink(machine: Machine, cell: Cell, bytes: number): Sink {
  if (cell.kind !== "memory")
    throw new NotTried("the report cannot go into a value that is passed", undefined);
  const start = cell.address;
  machine.watch(start, Math.min(cell.room, bytes + beyond));
  return {
    empty: () => {
      machine.takeWritten();
    },
    hold: (bytes) => {
      for (const [byte, value] of bytes.entries()) machine.memory.writeByte(start + byte, value);
    },
    taken: () => {
      const written = machine
        .takeWritten()
        .map(({ address, value, at }) => ({ byte: address - start, value, at }));
      const end = written.reduce((most, { byte }) => Math.max(most, byte + 1), 0);
      return {
        bytes: Array.from({ length: end }, (_, byte) => machine.memory.readByte(start + byte)),
        written,
      };
    },
  };
}

/** A function that the report is sent through: one byte with each call, or a pointer to bytes and their number. */
export class FunctionSink implements Sink {
  readonly #written: ByteWritten[] = [];
  readonly #model: DataModel;
  /** Tells who wrote a byte last; known once the machine is. */
  writerOf: (address: number) => At | undefined = () => undefined;

  constructor(model: DataModel) {
    this.#model = model;
  }

  empty(): void {
    this.#written.length = 0;
  }

  /** What was sent is gone. */
  hold(): void {}

  taken(): ReturnType<Sink["taken"]> {
    return { bytes: this.#written.map(({ value }) => value), written: [...this.#written] };
  }

  /** What is run in place of `symbol`. */
  bodyFor(symbol: FunctionSymbol): InsteadBody {
    const { parameters } = symbol.type;
    const start = parameters.at(-2);
    // A pointer to an object says where the byte goes.
    const isBuffer =
      start?.kind === "pointer" && start.to.kind !== "record" && parameters.at(-1)?.kind === "integer";
    const answer = symbol.type.returns.kind === "void" ? undefined : 1;
    return (given, memory, { argument, readsFrom }) => {
      if (isBuffer) this.#takeBuffer(Number(given.at(-2)), Number(given.at(-1)), memory, argument);
      else {
        const writer = readsFrom === 0 ? undefined : this.writerOf(readsFrom);
        this.#take(Number(given.at(-1) ?? 0) & 0xff, writer ?? argument);
      }
      return answer;
    };
  }

  #takeBuffer(start: number, length: number, memory: TargetMemory, argument: At | undefined): void {
    const mask = this.#model.pointer === 16 ? 0xffff : 0xffffffff;
    for (let index = 0; index < Math.min(length, 64); index += 1) {
      const address = (start + index) & mask;
      this.#take(memory.readByte(address), this.writerOf(address) ?? argument);
    }
  }

  #take(value: number, at: At | undefined): void {
    this.#written.push({ byte: this.#written.length, value, at });
  }
}
