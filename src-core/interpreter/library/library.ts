import type { OutsideBody, OutsideFunction } from "../outcome.ts";
import { bitFunctions } from "./bit-functions.ts";
import { characterFunctions } from "./characters.ts";
import { checksumFunctions } from "./checksums.ts";
import { delayFunctions } from "./delays.ts";
import { formattedOutput } from "./formatted-output.ts";
import { heapFunctions } from "./heap.ts";
import { integerFunctions } from "./integer-functions.ts";
import { mathFunctions } from "./math-functions.ts";
import { memoryFunctions } from "./memory-functions.ts";
import { numberParsing } from "./number-parsing.ts";
import { numberText } from "./number-text.ts";
import { printMethod } from "./print.ts";
import { randomFunctions } from "./random.ts";
import { sketchFunctions } from "./sketch-functions.ts";
import { sleepAndWatchdog } from "./sleep-and-watchdog.ts";
import { sortingFunctions } from "./sorting.ts";
import { streamFunctions } from "./streams.ts";
import { stringMethod, stringSum } from "./string-class.ts";
import { textFunctions } from "./text-functions.ts";
import { textSearch } from "./text-search.ts";
import { asType, type Subject } from "./values.ts";

const subjects: readonly Subject[] = [
  ...[memoryFunctions, textFunctions, textSearch, characterFunctions, checksumFunctions],
  ...[heapFunctions, randomFunctions, integerFunctions, mathFunctions, sortingFunctions],
  ...[numberParsing, numberText, formattedOutput, streamFunctions, sketchFunctions],
  ...[delayFunctions, sleepAndWatchdog, bitFunctions],
];

const byName: ReadonlyMap<string, OutsideBody> = new Map(
  subjects.flatMap((subject) => Object.entries(subject)),
);

/** avr-libc's `_P` forms take program memory, which lies in the one address space of a run. */
function plainName(name: string): string {
  return name.endsWith("_P") ? name.slice(0, -2) : name;
}

/**
 * Functions of avr-libc, the C library and the sketch core that need no hardware, as the built-in headers declare
 * them, the compiler's own, and those that put the chip to sleep or touch its watchdog. Undefined for all else: those that touch pins, clocks,
 * UARTs or EEPROM are not here.
 */
export const library: OutsideFunction = (symbol) => {
  // A function of that name in a file that is not there may be anything.
  if (!symbol.standIn) return undefined;
  const { qualifiedName, memberOf, type } = symbol;
  const body =
    memberOf?.name === "String"
      ? stringMethod(symbol)
      : memberOf?.name === "Print"
        ? printMethod(symbol)
        : qualifiedName === "operator+"
          ? stringSum(symbol)
          : byName.get(plainName(qualifiedName));
  if (body === undefined) return undefined;
  return (parameters, memory, surroundings) => asType(body(parameters, memory, surroundings), type.returns);
};
