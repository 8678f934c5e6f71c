import type { CoreFunctions } from "./core-function.ts";
import { turnCycles } from "./function-cycles.ts";
import type { Pins } from "./pins.ts";

/** `Arduino.h`: LSBFIRST 0, MSBFIRST 1; `shiftOut` and `shiftIn` take whatever is not 0 for the latter. */
const leastFirst = 0;

/** `pinMode`, `digitalWrite`, `digitalRead` (`wiring_digital.c`), `shiftOut` and `shiftIn` (`wiring_shift.c`). */
export function pinFunctions(pins: Pins): CoreFunctions {
  return {
    pinMode: (call) => {
      const [pin = 0, mode = 0] = call.parameters;
      pins.setMode(pins.numbered(pin, call), mode, call);
      return undefined;
    },
    digitalWrite: (call) => {
      const [pin = 0, level = 0] = call.parameters;
      pins.write(pins.numbered(pin, call), level !== 0, call);
      return undefined;
    },
    digitalRead: (call) => {
      const [pin = 0] = call.parameters;
      return pins.read(pins.numbered(pin, call), call) ? 1 : 0;
    },
    shiftOut: (call) => {
      const [dataNumber = 0, clockNumber = 0, order = 0, value = 0] = call.parameters;
      const data = pins.numbered(dataNumber, call);
      const clock = pins.numbered(clockNumber, call);
      for (let bit = 0; bit < 8; bit += 1) {
        call.access.wait(turnCycles.shiftOutBit);
        pins.write(data, ((value >> (order === leastFirst ? bit : 7 - bit)) & 1) !== 0, call);
        pins.write(clock, true, call);
        pins.write(clock, false, call);
      }
      return undefined;
    },
    shiftIn: (call) => {
      const [dataNumber = 0, clockNumber = 0, order = 0] = call.parameters;
      const data = pins.numbered(dataNumber, call);
      const clock = pins.numbered(clockNumber, call);
      let value = 0;
      for (let bit = 0; bit < 8; bit += 1) {
        pins.write(clock, true, call);
        if (pins.read(data, call)) value |= 1 << (order === leastFirst ? bit : 7 - bit);
        pins.write(clock, false, call);
        call.access.wait(turnCycles.shiftInBit);
      }
      return value;
    },
  };
}
