import { globalFlag, statusRegister } from "../chip/status-register.ts";
import type { CoreCall } from "./core-function.ts";
import { delayMicrosecondsCycles as cycles, turnCycles } from "./function-cycles.ts";
import type { CoreTime } from "./time.ts";

/** `delay` of `wiring.c`, which looks at `micros` over and over; turns that can change nothing are taken at once. */
export function delay(milliseconds: number, call: CoreCall, time: CoreTime): void {
  const { access } = call;
  let start = time.micros(call);
  let left = milliseconds;
  while (left > 0) {
    const passed = (time.micros(call) - start) >>> 0;
    if (passed >= 1000) {
      left -= 1;
      start = (start + 1000) >>> 0;
      continue;
    }
    const rest = (left * 1000 - passed) * time.cyclesPerMicrosecond;
    const isCounting = (access.read(statusRegister) & globalFlag) !== 0;
    // Half of the rest, for handlers take their share of the time, too.
    const turns = isCounting ? Math.floor(rest / 2 / turnCycles.delay) : 0;
    access.wait(Math.max(1, turns) * turnCycles.delay);
  }
}

/**
 * `delayMicroseconds` of `wiring.c`: from which clock on, up to how many microseconds it returns at once, loops for each
 * microsecond, and how many of them the call itself takes.
 */
const microsecondLoops = [
  { fromHz: 24_000_000, atOnce: 0, loops: 6, less: 5 },
  { fromHz: 20_000_000, atOnce: 1, loops: 5, less: 7 },
  { fromHz: 16_000_000, atOnce: 1, loops: 4, less: 5 },
  { fromHz: 12_000_000, atOnce: 1, loops: 3, less: 5 },
  { fromHz: 8_000_000, atOnce: 2, loops: 2, less: 4 },
] as const;

/** Cycles of a call with 0 to 65,535 us; the count of loops has 16 bits and goes round like the core's. */
export function delayMicrosecondsCycles(microseconds: number, clockHz: number): number {
  const kind = microsecondLoops.find(({ fromHz }) => clockHz >= fromHz);
  if (microseconds <= (kind?.atOnce ?? 25)) return cycles.atOnce;
  const loops =
    kind === undefined ? (microseconds - 22) >> 2 : (microseconds * kind.loops - kind.less) & 0xffff;
  return (loops === 0 ? 0x10000 : loops) * turnCycles.delayMicroseconds - 1 + cycles.aroundLoop;
}
