import type { DataModel } from "../../reader/types/types.ts";
import type { OutsideBody, Surroundings } from "../outcome.ts";
import { numberAt, type Passed, type Subject } from "./values.ts";

type Counted = (bits: string, refuse: Surroundings["refuse"]) => number;

const ones: Counted = (bits) => bits.replaceAll("0", "").length;

/** What is counted in the digits of a number, the highest first. */
const counts: Readonly<Record<string, Counted>> = {
  popcount: ones,
  parity: (bits, refuse) => ones(bits, refuse) & 1,
  /** One more than the place of the lowest bit that is set; 0 for 0. */
  ffs: (bits) => (bits.includes("1") ? bits.length - bits.lastIndexOf("1") : 0),
  clz: (bits, refuse) => (bits.includes("1") ? bits.indexOf("1") : refuse(ofNothing)),
  ctz: (bits, refuse) => (bits.includes("1") ? bits.length - 1 - bits.lastIndexOf("1") : refuse(ofNothing)),
};

/** gcc manual, "Other Builtins": "If x is 0, the result is undefined". */
const ofNothing = "the number of zeros beside the bits of 0, which is undefined";

const widths: readonly (readonly [suffix: string, bits: (model: DataModel) => number])[] = [
  ["", (model) => model.int],
  ["l", (model) => model.long],
  ["ll", (model) => model.longLong],
];

function digits(parameters: Passed, bits: number): string {
  return BigInt.asUintN(bits, BigInt(parameters[0] ?? 0))
    .toString(2)
    .padStart(bits, "0");
}

function swapped(bytes: number): OutsideBody {
  return (parameters) => {
    const hex = BigInt.asUintN(8 * bytes, BigInt(parameters[0] ?? 0))
      .toString(16)
      .padStart(2 * bytes, "0");
    return BigInt(`0x${(hex.match(/../g) ?? []).reverse().join("")}`);
  };
}

/** The compiler's own functions on bits: gcc manual, "Other Builtins" and "AVR Built-in Functions". */
export const bitFunctions: Subject = {
  ...Object.fromEntries(
    Object.entries(counts).flatMap(([name, count]) =>
      widths.map(([suffix, bits]): [string, OutsideBody] => [
        `__builtin_${name}${suffix}`,
        (parameters, _, { model, refuse }) => count(digits(parameters, bits(model)), refuse),
      ]),
    ),
  ),
  __builtin_bswap16: swapped(2),
  __builtin_bswap32: swapped(4),
  __builtin_bswap64: swapped(8),
  /** Swaps the halves of a byte ("AVR Instruction Set Manual", SWAP). */
  __builtin_avr_swap(parameters) {
    const value = numberAt(parameters, 0) & 0xff;
    return ((value << 4) | (value >> 4)) & 0xff;
  },
};
