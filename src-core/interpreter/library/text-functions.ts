import type { OutsideBody, TargetMemory } from "../outcome.ts";
import { toLower, toUpper } from "./characters.ts";
import { lengthAt, textAt, writeBytes, writeText } from "./target-text.ts";
import { numberAt, type Subject } from "./values.ts";

/** Difference of the first two characters that differ, the terminating zero included; 0 for none. */
export function compareTexts(
  memory: TargetMemory,
  left: number,
  right: number,
  most: number,
  each: (character: number) => number = (character) => character,
): number {
  for (let index = 0; index < most; index += 1) {
    const one = each(memory.readByte(left + index));
    const difference = one - each(memory.readByte(right + index));
    if (difference !== 0) return difference;
    if (one === 0) return 0;
  }
  return 0;
}

const UNLIMITED = 0x10000;

/** Writes what becomes of a text where it stood. */
function inPlace(change: (text: readonly number[]) => readonly number[]): OutsideBody {
  return (parameters, memory) => {
    const at = numberAt(parameters, 0);
    writeText(memory, at, change(textAt(memory, at)));
    return at;
  };
}

/** Copying, joining, comparing and measuring texts: C11 7.24, and avr-libc's other string functions. */
export const textFunctions: Subject = {
  strlen: (parameters, memory) => lengthAt(memory, numberAt(parameters, 0)),
  strnlen: (parameters, memory) => lengthAt(memory, numberAt(parameters, 0), numberAt(parameters, 1)),
  strcpy(parameters, memory) {
    const to = numberAt(parameters, 0);
    writeText(memory, to, textAt(memory, numberAt(parameters, 1)));
    return to;
  },
  strncpy(parameters, memory) {
    const to = numberAt(parameters, 0);
    const from = numberAt(parameters, 1);
    const size = numberAt(parameters, 2);
    const length = lengthAt(memory, from, size);
    for (let index = 0; index < size; index += 1) {
      memory.writeByte(to + index, index < length ? memory.readByte(from + index) : 0);
    }
    return to;
  },
  strcat(parameters, memory) {
    const to = numberAt(parameters, 0);
    writeText(memory, to + lengthAt(memory, to), textAt(memory, numberAt(parameters, 1)));
    return to;
  },
  strncat(parameters, memory) {
    const to = numberAt(parameters, 0);
    const added = textAt(memory, numberAt(parameters, 1)).slice(0, numberAt(parameters, 2));
    writeText(memory, to + lengthAt(memory, to), added);
    return to;
  },
  strlcpy(parameters, memory) {
    const text = textAt(memory, numberAt(parameters, 1));
    const size = numberAt(parameters, 2);
    if (size > 0) writeText(memory, numberAt(parameters, 0), text.slice(0, size - 1));
    return text.length;
  },
  strlcat(parameters, memory) {
    const to = numberAt(parameters, 0);
    const text = textAt(memory, numberAt(parameters, 1));
    const size = numberAt(parameters, 2);
    const held = lengthAt(memory, to, size);
    if (held < size) writeText(memory, to + held, text.slice(0, size - held - 1));
    return held + text.length;
  },
  strcmp: (parameters, memory) =>
    compareTexts(memory, numberAt(parameters, 0), numberAt(parameters, 1), UNLIMITED),
  strncmp: (parameters, memory) =>
    compareTexts(memory, numberAt(parameters, 0), numberAt(parameters, 1), numberAt(parameters, 2)),
  strcasecmp: (parameters, memory) =>
    compareTexts(memory, numberAt(parameters, 0), numberAt(parameters, 1), UNLIMITED, toLower),
  strncasecmp: (parameters, memory) =>
    compareTexts(memory, numberAt(parameters, 0), numberAt(parameters, 1), numberAt(parameters, 2), toLower),
  strlwr: inPlace((text) => text.map(toLower)),
  strupr: inPlace((text) => text.map(toUpper)),
  strrev: inPlace((text) => text.toReversed()),
  strdup(parameters, memory) {
    const text = textAt(memory, numberAt(parameters, 0));
    const to = memory.allocate(text.length + 1);
    if (to !== 0) writeBytes(memory, to, [...text, 0]);
    return to;
  },
};
