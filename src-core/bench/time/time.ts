/**
 * Moments and durations of the bench: whole picoseconds since power-up. A number holds them exactly for two and a half
 * hours, and the cycles of any usual clock come out at whole ones but for rounding by less than one.
 */
export type Time = number;

export const ns = 1_000;
export const us = 1_000 * ns;
export const ms = 1_000 * us;
export const second = 1_000 * ms;

/** Never: later than every moment. */
export const never: Time = Number.POSITIVE_INFINITY;

/** The moment of a clock's tick, counted from 0. */
export function timeOfCycle(cycle: number, hz: number): Time {
  return Math.round((cycle / hz) * second);
}

/** The first tick of a clock that is not before a moment. */
export function cycleAt(time: Time, hz: number): number {
  const near = Math.floor((time / second) * hz);
  for (let cycle = Math.max(0, near - 1); ; cycle += 1) if (timeOfCycle(cycle, hz) >= time) return cycle;
}
