import { AVR_RESET_FRAME, avrFrameBits, avrLineFormat } from "../../model/avr-frames.ts";
import type { BitPlace, Usart } from "../../model/chips/chip.ts";
import type { LineFormat } from "../../model/line-formats.ts";
import type { Bits } from "../walk/values.ts";
import type { UsartWrite } from "./usart-writes.ts";
import type { UsartPart } from "./usarts.ts";

const everyBit = 0xff;

/** What a control register holds after reset, as far as rate and frame go. */
function afterReset(part: UsartPart, { bits }: Usart): Bits {
  const frame = part === "c" ? avrFrameBits(AVR_RESET_FRAME) : undefined;
  const size = frame?.size ?? 0;
  const [, size1, size0] = bits.size;
  return { known: everyBit, ones: (((size >> 1) & 1) << size1.bit) | ((size & 1) << size0.bit) };
}

/** What a control register holds after these writes, all to the same USART and in order. */
export function stateAfter(part: UsartPart, usart: Usart, writes: readonly UsartWrite[]): Bits {
  let state = afterReset(part, usart);
  for (const each of writes) {
    if (each.part !== part || each.lost) continue;
    const after = applied(each, state);
    state = each.step.conditional ? common(state, after) : after;
  }
  return state;
}

function applied({ write }: UsartWrite, before: Bits): Bits {
  const { ones, zeros, kept, flipped } = write;
  const known = (ones | zeros | ((kept | flipped) & before.known)) & everyBit;
  const turned = flipped & before.known & ~before.ones;
  return { known, ones: (ones | (kept & before.ones) | turned) & known };
}

function common(a: Bits, b: Bits): Bits {
  const known = a.known & b.known & ~(a.ones ^ b.ones);
  return { known, ones: a.ones & known };
}

/** The bit as far as it is known. */
export function bitIn(bits: Bits, place: BitPlace): 0 | 1 | undefined {
  const mask = 1 << place.bit;
  if ((bits.known & mask) === 0) return undefined;
  return (bits.ones & mask) === 0 ? 0 : 1;
}

/** The frame that UCSRnB and UCSRnC choose; undefined where a bit is not known or the code is reserved. */
export function formatOf({ bits }: Usart, b: Bits, c: Bits): LineFormat | undefined {
  const size = code([bitIn(b, bits.size[0]), bitIn(c, bits.size[1]), bitIn(c, bits.size[2])]);
  const parity = code(bits.parity.map((place) => bitIn(c, place)));
  const stop = bitIn(c, bits.stop);
  if (size === undefined || parity === undefined || stop === undefined) return undefined;
  return avrLineFormat({ size, parity, stop });
}

function code(bits: readonly (0 | 1 | undefined)[]): number | undefined {
  let value = 0;
  for (const bit of bits) {
    if (bit === undefined) return undefined;
    value = value * 2 + bit;
  }
  return value;
}
