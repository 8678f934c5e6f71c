import type { DataModel } from "../../reader/types/types.ts";
import type { Surroundings, TargetMemory } from "../outcome.ts";
import { reallocate } from "./heap.ts";
import { doubleText, integerText, signedText } from "./number-text.ts";
import type { Piece } from "./pieces.ts";
import { ascii, readBytes, readUnsigned, textAt, writeText, writeUnsigned } from "./target-text.ts";
import { unsigned } from "./values.ts";

/**
 * An object of class String in memory: a pointer to the text, how long that may become, and how long it is, as
 * WString.h declares them. A null pointer is the invalid string, which is false.
 */
export class StringObject {
  readonly address: number;
  readonly #memory: TargetMemory;
  readonly #model: DataModel;

  constructor(address: number, memory: TargetMemory, { model }: Surroundings) {
    this.address = address;
    this.#memory = memory;
    this.#model = model;
  }

  get buffer(): number {
    return readUnsigned(this.#memory, this.address, this.#model.pointer / 8);
  }

  get #capacity(): number {
    return readUnsigned(this.#memory, this.address + this.#model.pointer / 8, this.#model.int / 8);
  }

  get #lengthAt(): number {
    return this.address + this.#model.pointer / 8 + this.#model.int / 8;
  }

  get length(): number {
    return readUnsigned(this.#memory, this.#lengthAt, this.#model.int / 8);
  }

  get bytes(): number[] {
    return this.buffer === 0 ? [] : readBytes(this.#memory, this.buffer, this.length);
  }

  /** Makes an invalid string of memory that held nothing. */
  begin(): void {
    this.#set(0, 0);
    this.#setLength(0);
  }

  invalidate(): void {
    if (this.buffer !== 0) this.#memory.release(this.buffer);
    this.begin();
  }

  /** Makes room for a text of this length; false where there is none, the string being as before. */
  reserve(length: number): boolean {
    const held = this.buffer;
    if (held !== 0 && this.#capacity >= length) return true;
    const buffer = reallocate(this.#memory, held, length + 1);
    if (buffer === 0) return false;
    this.#set(buffer, length);
    if (this.length === 0) this.#memory.writeByte(buffer, 0);
    return true;
  }

  /** Takes another text; undefined, or no room for it, makes the string invalid. */
  assign(bytes: readonly number[] | undefined): void {
    if (bytes === undefined || !this.reserve(bytes.length)) {
      this.invalidate();
      return;
    }
    writeText(this.#memory, this.buffer, bytes);
    this.#setLength(bytes.length);
  }

  /** Takes the text of another string: it is copied where there is room for it, else its buffer goes over. */
  take(other: StringObject): void {
    if (this.buffer !== 0 && other.buffer !== 0 && this.#capacity >= other.length) {
      this.assign(other.bytes);
      other.#setLength(0);
      return;
    }
    if (this.buffer !== 0) this.#memory.release(this.buffer);
    this.#set(other.buffer, other.#capacity);
    this.#setLength(other.length);
    other.begin();
  }

  /** False for nothing to append or no room for it. */
  append(bytes: readonly number[] | undefined): boolean {
    if (bytes === undefined) return false;
    if (bytes.length === 0) return true;
    const whole = [...this.bytes, ...bytes];
    if (!this.reserve(whole.length)) return false;
    this.assign(whole);
    return true;
  }

  #set(buffer: number, capacity: number): void {
    writeUnsigned(this.#memory, this.address, buffer, this.#model.pointer / 8);
    writeUnsigned(this.#memory, this.address + this.#model.pointer / 8, capacity, this.#model.int / 8);
  }

  #setLength(length: number): void {
    writeUnsigned(this.#memory, this.#lengthAt, length, this.#model.int / 8);
  }
}

/** Base of an integer, or digits behind the point. */
export interface NumberForm {
  readonly base: number;
  readonly decimals: number;
}

export const usualForm: NumberForm = { base: 10, decimals: 2 };

/** The text of a parameter as class String takes it; undefined for a null pointer or an invalid string. */
export function pieceBytes(
  piece: Piece,
  value: number,
  { base, decimals }: NumberForm,
  memory: TargetMemory,
  surroundings: Surroundings,
): number[] | undefined {
  switch (piece.kind) {
    case "character":
      // A zero ends the text before it begins.
      return value === 0 ? [] : [value & 0xff];
    case "integer": {
      const bits = Math.max(piece.bits, surroundings.model.int);
      return ascii(
        piece.signed ? signedText(value, base, bits) : integerText(unsigned(value, piece.bits), base),
      );
    }
    case "floating":
      return ascii(doubleText(value, decimals + 2, decimals, surroundings.model));
    case "text":
    case "flash-text":
      return value === 0 ? undefined : textAt(memory, value);
    case "string": {
      const string = new StringObject(value, memory, surroundings);
      return string.buffer === 0 ? undefined : string.bytes;
    }
    case "printable":
      return undefined;
  }
}
