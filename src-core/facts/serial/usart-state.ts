import type { BitPlace, Usart } from "../../model/chips/chip.ts";
import type { LineFormat } from "../../model/line-formats.ts";
import type { Bits } from "../walk/values.ts";
import type { UsartWrite } from "./usart-writes.ts";
import type { UsartPart } from "./usarts.ts";

const everyBit = 0xff;

/** What a control register holds after reset: UCSRnC starts as 8N1, the rest as 0 (UDRE aside). */
export function afterReset(part: UsartPart, usart: Usart): Bits {
  const [, size1, size0] = usart.bits.size;
  const ones = part === "c" ? (1 << size1.bit) | (1 << size0.bit) : 0;
  return { known: everyBit, ones };
}

/** What a control register holds after these writes, all to the same USART and in order. */
export function stateAfter(part: UsartPart, usart: Usart, writes: readonly UsartWrite[]): Bits {
  let state = afterReset(part, usart);
  for (const each of writes) {
    if (each.part !== part) continue;
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

const DATA_BITS = new Map<number, LineFormat["dataBits"]>([
  [0b000, 5],
  [0b001, 6],
  [0b010, 7],
  [0b011, 8],
  [0b111, 9],
]);

/** The frame that UCSRnB and UCSRnC choose; undefined where a bit is not known or the code is reserved. */
export function formatOf(usart: Usart, b: Bits, c: Bits): LineFormat | undefined {
  const { size, stop, parity } = usart.bits;
  const bits = [bitIn(b, size[0]), bitIn(c, size[1]), bitIn(c, size[2])];
  const dataBits = DATA_BITS.get(code(bits) ?? -1);
  const stopBit = bitIn(c, stop);
  const parityCode = code(parity.map((place) => bitIn(c, place)));
  if (dataBits === undefined || stopBit === undefined || parityCode === undefined) return undefined;
  if (parityCode === 0b01) return undefined;
  return {
    dataBits,
    parity: parityCode === 0 ? "none" : parityCode === 0b10 ? "even" : "odd",
    stopBits: stopBit === 1 ? 2 : 1,
  };
}

function code(bits: readonly (0 | 1 | undefined)[]): number | undefined {
  let value = 0;
  for (const bit of bits) {
    if (bit === undefined) return undefined;
    value = value * 2 + bit;
  }
  return value;
}
