import type { CoreFunctions } from "./core-function.ts";
import { delay, delayMicrosecondsCycles } from "./delays.ts";
import type { CoreTime } from "./time.ts";

/** `millis`, `micros`, `delay` and `delayMicroseconds` (`wiring.c`). */
export function timeFunctions(time: CoreTime, clockHz: number, hasOwnYield: boolean): CoreFunctions {
  return {
    millis: (call) => time.millis(call),
    micros: (call) => time.micros(call),
    delay: (call) => {
      if (hasOwnYield) call.surroundings.refuse("`delay` with a `yield` of your own, which it would call");
      delay(call.parameters[0] ?? 0, call, time);
      return undefined;
    },
    delayMicroseconds: ({ access, parameters }) => {
      access.wait(delayMicrosecondsCycles(parameters[0] ?? 0, clockHz));
      return undefined;
    },
    yield: () => undefined,
  };
}
