import type { Surroundings, TargetMemory } from "../outcome.ts";
import { toLower } from "./characters.ts";
import { readUnsigned, textAt, writeUnsigned } from "./target-text.ts";
import { numberAt, type Subject } from "./values.ts";

/** Where `what` begins in `text`, from an index on; -1 for nowhere. */
export function indexOfBytes(text: readonly number[], what: readonly number[], from = 0): number {
  for (let start = from; start + what.length <= text.length; start += 1) {
    if (what.every((byte, index) => text[start + index] === byte)) return start;
  }
  return -1;
}

function lengthWhile(text: readonly number[], holds: (byte: number) => boolean): number {
  const end = text.findIndex((byte) => !holds(byte));
  return end < 0 ? text.length : end;
}

interface Word {
  /** 0 for none left. */
  readonly start: number;
  /** Where to go on. */
  readonly next: number;
}

/** The next word between separators, ended by a zero written behind it; C11 7.24.5.8. */
function nextWord(memory: TargetMemory, from: number, separators: readonly number[]): Word {
  if (from === 0) return { start: 0, next: 0 };
  let start = from;
  while (separators.includes(memory.readByte(start))) start += 1;
  if (memory.readByte(start) === 0) return { start: 0, next: 0 };
  const bytes = textAt(memory, start);
  const length = bytes.findIndex((byte) => separators.includes(byte));
  if (length < 0) return { start, next: 0 };
  memory.writeByte(start + length, 0);
  return { start, next: start + length + 1 };
}

const STRTOK = "strtok";

function pointerBytes({ model }: Surroundings): number {
  return model.pointer / 8;
}

/** Searching in texts: C11 7.24.5, and avr-libc's strcasestr and strsep. */
export const textSearch: Subject = {
  strchr(parameters, memory) {
    const from = numberAt(parameters, 0);
    const index = [...textAt(memory, from), 0].indexOf(numberAt(parameters, 1) & 0xff);
    return index < 0 ? 0 : from + index;
  },
  strrchr(parameters, memory) {
    const from = numberAt(parameters, 0);
    const index = [...textAt(memory, from), 0].lastIndexOf(numberAt(parameters, 1) & 0xff);
    return index < 0 ? 0 : from + index;
  },
  strstr(parameters, memory) {
    const from = numberAt(parameters, 0);
    const index = indexOfBytes(textAt(memory, from), textAt(memory, numberAt(parameters, 1)));
    return index < 0 ? 0 : from + index;
  },
  strcasestr(parameters, memory) {
    const from = numberAt(parameters, 0);
    const what = textAt(memory, numberAt(parameters, 1)).map(toLower);
    const index = indexOfBytes(textAt(memory, from).map(toLower), what);
    return index < 0 ? 0 : from + index;
  },
  strpbrk(parameters, memory) {
    const from = numberAt(parameters, 0);
    const any = textAt(memory, numberAt(parameters, 1));
    const index = textAt(memory, from).findIndex((byte) => any.includes(byte));
    return index < 0 ? 0 : from + index;
  },
  strspn(parameters, memory) {
    const accepted = textAt(memory, numberAt(parameters, 1));
    return lengthWhile(textAt(memory, numberAt(parameters, 0)), (byte) => accepted.includes(byte));
  },
  strcspn(parameters, memory) {
    const rejected = textAt(memory, numberAt(parameters, 1));
    return lengthWhile(textAt(memory, numberAt(parameters, 0)), (byte) => !rejected.includes(byte));
  },
  /** Empty words count, other than with strtok: avr-libc's manual. */
  strsep(parameters, memory, surroundings) {
    const bytes = pointerBytes(surroundings);
    const from = readUnsigned(memory, numberAt(parameters, 0), bytes);
    if (from === 0) return 0;
    const separators = textAt(memory, numberAt(parameters, 1));
    const length = textAt(memory, from).findIndex((byte) => separators.includes(byte));
    if (length >= 0) memory.writeByte(from + length, 0);
    writeUnsigned(memory, numberAt(parameters, 0), length < 0 ? 0 : from + length + 1, bytes);
    return from;
  },
  strtok(parameters, memory, { kept }) {
    const from = numberAt(parameters, 0) || (kept.get(STRTOK) ?? 0);
    const { start, next } = nextWord(memory, from, textAt(memory, numberAt(parameters, 1)));
    kept.set(STRTOK, next);
    return start;
  },
  strtok_r(parameters, memory, surroundings) {
    const state = numberAt(parameters, 2);
    const bytes = pointerBytes(surroundings);
    const from = numberAt(parameters, 0) || readUnsigned(memory, state, bytes);
    const { start, next } = nextWord(memory, from, textAt(memory, numberAt(parameters, 1)));
    writeUnsigned(memory, state, next, bytes);
    return start;
  },
};
