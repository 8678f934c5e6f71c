import type { MouseByte, Observation } from "../run-record.ts";
import type { LateRead, Pulse } from "./pulse.ts";

/** Pulses of a byte from the mouse: start bit, eight data bits, parity, stop bit. The PS/2 Mouse/Keyboard Protocol, Device-to-Host. */
const pulsesOfByte = 11;
const stopBit = pulsesOfByte - 1;

/** What the firmware missed or read at the wrong time of the bytes that the mouse sent whole. */
export function observationsOf(pulses: readonly Pulse[], sent: readonly MouseByte[]): readonly Observation[] {
  const found: Observation[] = [];
  let next = 0;
  let hasWatched = false;
  for (const { start, end, whole } of sent) {
    while (next < pulses.length && (pulses[next]?.fall ?? end) < start) next += 1;
    const here: Pulse[] = [];
    for (; next < pulses.length; next += 1) {
      const pulse = pulses[next];
      if (pulse === undefined || pulse.fall > end) break;
      here.push(pulse);
    }
    // Of a byte that the firmware cut off it wants nothing.
    if (!whole || here.length !== pulsesOfByte) continue;
    found.push(...missedIn(here, hasWatched), ...readLateIn(here));
    hasWatched ||= watchedOf(here) >= stopBit;
  }
  return found;
}

/**
 * Edges that the firmware did not see. Somebody who looks at the clock himself is known by that: he saw most pulses of
 * this byte, or all of one before, which is `hasWatched`. Others may have a part of the chip that listens for them. What
 * comes behind the last bit that he needs is no matter to him.
 */
function missedIn(pulses: readonly Pulse[], hasWatched: boolean): readonly Observation[] {
  const looks = watchedOf(pulses);
  const isWatched = looks * 2 > pulses.length;
  const missed = pulses.filter((pulse, bit) =>
    pulse.byInterrupt ? !pulse.isSeen : bit < stopBit && !isLookedAt(pulse) && (isWatched || hasWatched),
  );
  return missed.map(({ fall, next }) => ({ kind: "edge-missed", time: fall, at: next }));
}

function watchedOf(pulses: readonly Pulse[]): number {
  return pulses.filter((pulse) => !pulse.byInterrupt && isLookedAt(pulse)).length;
}

function isLookedAt({ isSeen, readWhileLow }: Pulse): boolean {
  return isSeen || readWhileLow;
}

/**
 * Data bits and parity that were not read while the clock was low, and were read afterwards. Somebody who looks now and then
 * whether the line is at rest reads data as well: who receives does so in a handler, or bit after bit.
 */
function readLateIn(pulses: readonly Pulse[]): readonly Observation[] {
  const late = pulses
    .slice(1, stopBit)
    .flatMap(({ readWhileLow, readLate }) => (readWhileLow || readLate === undefined ? [] : [readLate]));
  const often = (read: LateRead): boolean => late.filter(({ at }) => at === read.at).length > 1;
  return late
    .filter((read) => read.isMasked || often(read))
    .map(({ time, at }) => ({ kind: "sampled-wrong", time, at }));
}
