import type { OutsideBody, Surroundings } from "../outcome.ts";
import { numberAt, type Subject } from "./values.ts";

/**
 * The minimal standard generator, as avr-libc's rand and random use it, with Schrage's way to stay within 32 bits:
 * Park and Miller, "Random number generators: good ones are hard to find", 1988. A state of 0, which would stay 0,
 * stands for another.
 */
const MODULUS = 0x7fffffff;
const MULTIPLIER = 16807;
const QUOTIENT = 127773;
const REMAINDER = 2836;
const FOR_ZERO = 123459876;
const RAND_MAX = 0x7fff;

const RAND = "rand";
const RANDOM = "random";

/** The next state. Seeds beyond 31 bits are taken as negative numbers, as a 32-bit `long` holds them. */
export function nextRandom(state: number): number {
  const from = (state | 0) === 0 ? FOR_ZERO : state | 0;
  const high = Math.trunc(from / QUOTIENT);
  const next = MULTIPLIER * (from % QUOTIENT) - REMAINDER * high;
  return next < 0 ? next + MODULUS : next;
}

function draw({ kept }: Surroundings, name: string): number {
  const next = nextRandom(kept.get(name) ?? 1);
  kept.set(name, next);
  return next % (MODULUS + 1);
}

export const randomFunctions: Subject = {
  rand: (_parameters, _memory, surroundings) => draw(surroundings, RAND) % (RAND_MAX + 1),
  srand(parameters, _memory, { kept }) {
    kept.set(RAND, numberAt(parameters, 0));
    return undefined;
  },
  srandom(parameters, _memory, { kept }) {
    kept.set(RANDOM, numberAt(parameters, 0));
    return undefined;
  },
  randomSeed(parameters, _memory, { kept }) {
    const seed = numberAt(parameters, 0);
    if (seed !== 0) kept.set(RANDOM, seed);
    return undefined;
  },
};

/** `random()` of the C library, and the sketch core's `random(most)` and `random(least, most)`. */
export const randomBelow: OutsideBody = (parameters, _memory, surroundings) => {
  if (parameters.length === 0) return draw(surroundings, RANDOM);
  const least = parameters.length === 1 ? 0 : numberAt(parameters, 0);
  const most = numberAt(parameters, parameters.length - 1);
  if (parameters.length === 1 && most === 0) return 0;
  if (parameters.length === 2 && least >= most) return least;
  const range = (most - least) | 0;
  return range === 0 ? least : least + (draw(surroundings, RANDOM) % range);
};
