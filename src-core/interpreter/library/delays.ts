import { numberAt, type Subject } from "./values.ts";

/** What avr-libc takes for F_CPU where nothing is said, in Hz (util/delay.h). */
const clockUnlessSaid = 1_000_000;

/** Cycles in a unit of time; avr-gcc's `double` has 32 bits, so that each step of the formula is rounded to them. */
function cyclesIn(time: number, unitsInSecond: number, clockHz: number): number {
  const each = Math.fround(Math.fround(clockHz) / unitsInSecond);
  return Math.min(Math.ceil(Math.abs(Math.fround(each * Math.fround(time)))), 0xffff_ffff);
}

/** A counter of 0 goes round once more than its largest value. The last turn's branch is not taken. */
function turnsTake(count: number, most: number, each: number): number {
  return (count % most || most) * each - 1;
}

const delays: Readonly<Record<string, (argument: number, clockHz: number) => number>> = {
  _delay_ms: (milliseconds, clockHz) => cyclesIn(milliseconds, 1e3, clockHz),
  _delay_us: (microseconds, clockHz) => cyclesIn(microseconds, 1e6, clockHz),
  __builtin_avr_delay_cycles: (cycles) => cycles >>> 0,
  // DEC and BRNE.
  _delay_loop_1: (count) => turnsTake(count, 0x100, 3),
  // SBIW and BRNE.
  _delay_loop_2: (count) => turnsTake(count, 0x10000, 4),
};

/** Delays whose argument is a constant that is in no register. */
const folded: ReadonlySet<string> = new Set(["_delay_ms", "_delay_us", "__builtin_avr_delay_cycles"]);

export function isFoldedDelay(name: string): boolean {
  return folded.has(name);
}

/**
 * Cycles that a delay of avr-libc takes from its first instruction to its last, 1 to 4,294,967,295: `_delay_ms` and
 * `_delay_us` rounded up (util/delay.h), the loops by the AVR Instruction Set Manual (util/delay_basic.h), without what
 * loads their argument. Undefined for a function that is none of these. `clockHz` in Hz.
 */
export function cyclesOfDelay(
  name: string,
  parameters: readonly (number | bigint)[],
  clockHz: number,
): number | undefined {
  return Object.hasOwn(delays, name) ? delays[name]?.(numberAt(parameters, 0), clockHz) : undefined;
}

/** The delays as functions: time goes by, where it is counted. */
export const delayFunctions: Subject = Object.fromEntries(
  Object.keys(delays).map((name) => [
    name,
    (parameters, _memory, { wait, clockHz }) => {
      wait(cyclesOfDelay(name, parameters, clockHz ?? clockUnlessSaid) ?? 0);
      return undefined;
    },
  ]),
);
