import type { At } from "../../reader/typed/nodes.ts";
import type { MouseByte, Observation } from "../run-record.ts";
import type { Time } from "../time/time.ts";
import type { Pulse } from "./pulse.ts";

/** Pulses of a byte from the mouse: start bit, eight data bits, parity, stop bit. The PS/2 Mouse/Keyboard Protocol, Device-to-Host. */
const pulsesOfByte = 11;
const stopBit = pulsesOfByte - 1;
/** Who reads so many bits of a byte too late means to; fewer were late because something else was going on. */
const manyBits = 4;
/** Who asks so often in one pulse whether the UART is free waits for that; once is a look in passing. */
const waitingLooks = 2;

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
  const isWatched = hasWatched || watchedOf(pulses) * 2 > pulses.length;
  return pulses
    .filter((pulse, bit) =>
      pulse.byInterrupt ? !pulse.isSeen : isWatched && bit < stopBit && !isLookedAt(pulse),
    )
    .map(({ fall, next, uartLooks }) => ({
      kind: "edge-missed",
      time: fall,
      at: next,
      waitsForUart: uartLooks >= waitingLooks,
    }));
}

function watchedOf(pulses: readonly Pulse[]): number {
  return pulses.filter((pulse) => !pulse.byInterrupt && isLookedAt(pulse)).length;
}

function isLookedAt({ isSeen, readWhileLow }: Pulse): boolean {
  return isSeen || readWhileLow;
}

/**
 * Data bits and parity that were not read while the clock was low, and were read afterwards: the code reads at the wrong time,
 * or it was kept from reading in time by what ran when the clock fell. Somebody who looks now and then whether the line is at
 * rest reads data as well, without an interrupt and few times in a byte.
 */
function readLateIn(pulses: readonly Pulse[]): readonly Observation[] {
  const late = pulses.slice(1, stopBit).flatMap((pulse): LateBit[] => {
    const { readLate, readWhileLow } = pulse;
    return readWhileLow || readLate === undefined ? [] : [{ pulse, ...readLate }];
  });
  if (late.filter(({ pulse }) => !pulse.isLate).length >= manyBits)
    return late.map(({ time, at }) => ({ kind: "sampled-wrong", time, at }));
  return late.flatMap(({ pulse: { byInterrupt, fall, began, uartLooks } }) =>
    byInterrupt
      ? [{ kind: "edge-missed", time: fall, at: began, waitsForUart: uartLooks >= waitingLooks }]
      : [],
  );
}

interface LateBit {
  readonly pulse: Pulse;
  readonly time: Time;
  readonly at: At | undefined;
}
