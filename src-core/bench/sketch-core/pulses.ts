import type { CoreCall, CoreFunctions } from "./core-function.ts";
import { turnCycles } from "./function-cycles.ts";
import type { Pins } from "./pins.ts";
import type { CoreTime } from "./time.ts";

/** `pulseIn` and `pulseInLong` (`wiring_pulse.c`, `wiring_pulse.S`). */
export function pulseFunctions(pins: Pins, time: CoreTime): CoreFunctions {
  return {
    pulseIn: (call) => {
      const [number = 0, state = 0, timeout = 0] = call.parameters;
      const { input, mask } = pins.numbered(number, call);
      const wanted = state === 0 ? 0 : mask;
      const perMicrosecond = time.cyclesPerMicrosecond;
      let left = Math.floor(((timeout * perMicrosecond) >>> 0) / turnCycles.pulseMeasured);
      const isWanted = (): boolean => (call.access.read(input) & mask) === wanted;
      for (const before of [true, false]) {
        while (isWanted() === before) {
          left -= call.access.waitTurns(turnCycles.pulseAwaited, left);
          if (left <= 0) return 0;
        }
      }
      let width = 0;
      while (isWanted()) {
        width += call.access.waitTurns(turnCycles.pulseMeasured, left - width);
        if (width >= left) return 0;
      }
      return width === 0 ? 0 : Math.floor((width * 16 + 16) / perMicrosecond);
    },
    pulseInLong: (call) => {
      const [number = 0, state = 0, timeout = 0] = call.parameters;
      const { input, mask } = pins.numbered(number, call);
      const wanted = state === 0 ? 0 : mask;
      const started = time.micros(call);
      const lasts = (level: boolean): boolean => {
        while (((call.access.read(input) & mask) === wanted) === level) {
          if (since(started, call) > timeout) return false;
        }
        return true;
      };
      const since = (start: number, of: CoreCall): number => (time.micros(of) - start) >>> 0;
      if (!lasts(true) || !lasts(false)) return 0;
      const begun = time.micros(call);
      return lasts(true) ? since(begun, call) : 0;
    },
  };
}
