import type { Time } from "../../time/time.ts";
import type { Edge } from "../../wires/edge.ts";

/** How far a space may be from a whole number of bits, in bits, and the part of all spaces that has to be nearer. */
const NEAR = 0.12;
const MOST = 0.8;

/** What is looked for, in parts of the right bit. */
const SHORTEST = 0.4;
const LONGEST = 1.7;
const STEP = 0.01;

/**
 * How long the line's own bit is, whatever it should be: of what most spaces are a whole number, what is nearest to the right
 * bit. Marks may go over into a stop bit and the rest behind it. The right bit where there is no such length.
 */
export function ownBit(edges: readonly Edge[], right: Time, dataBits: number): Time {
  const spaces = spacesIn(edges).filter((space) => space <= (dataBits + 1.5) * right * LONGEST);
  const fits = (bit: Time): boolean => {
    const near = spaces.filter((space) => Math.abs(space / bit - bitsIn(space, bit)) <= NEAR);
    return near.length >= MOST * spaces.length;
  };
  const part = fromRightOn.find((each) => fits(each * right));
  if (part === undefined) return right;
  const bits = spaces.map((space) => space / bitsIn(space, part * right)).toSorted((a, b) => a - b);
  return bits[Math.floor(bits.length / 2)] ?? right;
}

function spacesIn(edges: readonly Edge[]): readonly Time[] {
  const spaces: Time[] = [];
  let began: Time | undefined;
  for (const { wire, level, time } of edges) {
    if (wire !== "rxd") continue;
    if (level === 1 && began !== undefined) spaces.push(time - began);
    began = level === 0 ? time : undefined;
  }
  return spaces;
}

/** The whole number of bits that a space is nearest to. */
function bitsIn(space: Time, bit: Time): number {
  return Math.max(1, Math.round(space / bit));
}

/** Parts of the right bit, the nearest to it first. */
const fromRightOn: readonly number[] = Array.from(
  { length: Math.round((LONGEST - SHORTEST) / STEP) + 1 },
  (_, index) => SHORTEST + index * STEP,
).toSorted((a, b) => Math.abs(a - 1) - Math.abs(b - 1));
