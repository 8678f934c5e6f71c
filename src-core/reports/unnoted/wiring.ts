import { pathOf } from "../../notes/values/operand.ts";
import type { Cell } from "../subject/cell.ts";
import { integerShape } from "../subject/cell.ts";
import { EncoderCall } from "../subject/encoder-call.ts";
import { stopped } from "../subject/not-tried.ts";
import type { Request } from "../trial-request.ts";

/** How one bit of what a function writes follows one of its inputs. */
export interface Tie {
  readonly input: string;
  /** Bit of the input; undefined where the bit only tells whether it is zero. */
  readonly bit: number | undefined;
  /** It is the bit of the input's opposite. */
  readonly opposite: boolean;
  /** It is turned over. */
  readonly inverted: boolean;
  /** Of values so large at most: what is clipped or looked up in a table follows an input no further. */
  readonly within: number;
}

/** What a function writes, bit by bit. */
export interface Wiring {
  /** Bytes written with everything at zero. */
  readonly rest: readonly number[];
  /** The fewest and the most bytes that were written. */
  readonly lengths: { readonly least: number; readonly most: number };
  /** By byte and bit; empty where nothing ties the bit, undefined where it follows something else. */
  readonly ties: readonly (readonly (readonly Tie[])[])[];
  /** Inputs that are either 0 or 1. */
  readonly truths: ReadonlySet<string>;
}

/** Of the bits that are looked at; it is the sign. */
export const highestBit = 7;

/** Bytes to look at: no layout has more. */
const mostBytes = 5;

/** Changes one input after the other. Throws `NotTried`. */
export function wiringOf(request: Request, into: string, inputs: readonly string[]): Wiring {
  const { model } = request.program;
  const call = new EncoderCall(request, into, mostBytes);
  const sent = (assignments: readonly { cell: Cell; value: number }[]): readonly number[] => {
    const result = call.send(assignments);
    if (result.kind === "stopped") throw stopped(result.stop, undefined, result.asked);
    return result.bytes;
  };
  const rest = sent([]);
  const lengths = { least: rest.length, most: rest.length };
  const ties: Tie[][][] = Array.from({ length: mostBytes }, () => Array.from({ length: 8 }, () => []));
  const truths = new Set<string>();
  for (const input of inputs) {
    const cell = call.reach.cell(pathOf(input));
    const shape = integerShape(cell, model);
    if (shape === undefined) continue;
    if (shape.truth || shape.bits === 1) truths.add(input);
    const values = shape.truth || shape.bits === 1 ? [0, 1] : probesFor(shape.bits);
    const came = values.map((value) => ({
      value,
      bytes: sent([{ cell, value: value < 0 && !shape.signed ? value + 2 ** shape.bits : value }]),
    }));
    for (const { bytes } of came) {
      lengths.least = Math.min(lengths.least, bytes.length);
      lengths.most = Math.max(lengths.most, bytes.length);
    }
    for (const [byte, bits] of ties.entries()) {
      for (const [bit, list] of bits.entries()) {
        const levels = came.map(({ value, bytes }) => [value, ((bytes[byte] ?? 0) >> bit) & 1] as const);
        list.push(...tiesOf(input, levels));
      }
    }
  }
  return { rest, lengths, ties, truths };
}

/** 0 and 1 first, small numbers, powers of two and some between, of both signs. */
function probesFor(bits: number): readonly number[] {
  const most = 2 ** (Math.min(bits, 8) - 1) - 1;
  const usual = [1, 2, 3, 5, 6, 9, 11, 16, 20, 27, 32, 37, 42, 51, 64, 70, 85, 99, 106, 120, 127];
  const fitting = usual.filter((value) => value <= most);
  return [0, ...fitting, ...fitting.map((value) => -value)];
}

/** Everything, what a wheel can be, what a button can be. */
const reaches = [127, 7, 1];

/** What explains a bit over the widest reach that anything does; nothing where the input does not change it. */
function tiesOf(input: string, levels: readonly Level[]): readonly Tie[] {
  const first = levels[0]?.[1];
  if (levels.every(([, level]) => level === first)) return [];
  for (const within of reaches) {
    const near = levels.filter(([value]) => Math.abs(value) <= within && (within > 1 || value >= 0));
    const ties = guesses(input, within).filter((tie) =>
      near.every(([value, level]) => levelOf(tie, value) === level),
    );
    if (ties.length > 0) return ties;
  }
  return [];
}

type Level = readonly [value: number, level: number];

function guesses(input: string, within: number): readonly Tie[] {
  const senses = [false, true];
  return senses.flatMap((inverted) => [
    ...(within === 1 ? [] : senses).flatMap((opposite) =>
      Array.from({ length: highestBit + 1 }, (_, bit): Tie => ({ input, bit, opposite, inverted, within })),
    ),
    { input, bit: undefined, opposite: false, inverted, within },
  ]);
}

function levelOf({ bit, opposite, inverted }: Tie, value: number): number {
  const isSet = bit === undefined ? value !== 0 : ((opposite ? -value : value) >> bit) % 2 !== 0;
  return isSet === inverted ? 0 : 1;
}
