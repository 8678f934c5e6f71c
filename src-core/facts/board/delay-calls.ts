import type { OutsideCall } from "../walk/events.ts";
import { numberOf, type Value } from "../walk/values.ts";

/** A call that does nothing but pass time. */
export interface DelayCall {
  /** Microseconds; undefined where the argument, or the clock that turns cycles into time, is not known. */
  readonly us: number | undefined;
  /** The argument that says how long. */
  readonly length: Value | undefined;
  /** It is known only in cycles of the chip's clock. */
  readonly needsClock: boolean;
}

/** What one unit of the argument of a delay stands for. */
export type DelayScale =
  | { readonly kind: "time"; readonly us: number }
  /** `whole`: turns that an argument of 0 stands for. */
  | { readonly kind: "cycles"; readonly each: number; readonly whole: number };

const milliseconds: DelayScale = { kind: "time", us: 1000 };
const microseconds: DelayScale = { kind: "time", us: 1 };

/** Delays of the sketch core, of avr-libc (util/delay.h, util/delay_basic.h) and of vendor kits. */
const SCALES: ReadonlyMap<string, DelayScale> = new Map<string, DelayScale>([
  ["delay", milliseconds],
  ["delayMicroseconds", microseconds],
  ["_delay_ms", milliseconds],
  ["_delay_us", microseconds],
  ["__delay_ms", milliseconds],
  ["__delay_us", microseconds],
  ["delay_ms", milliseconds],
  ["delay_us", microseconds],
  ["Delay_Ms", milliseconds],
  ["Delay_Us", microseconds],
  ["HAL_Delay", milliseconds],
  ["sleep_ms", milliseconds],
  ["sleep_us", microseconds],
  ["busy_wait_ms", milliseconds],
  ["busy_wait_us", microseconds],
  ["busy_wait_us_32", microseconds],
  ["__builtin_avr_delay_cycles", { kind: "cycles", each: 1, whole: 0 }],
  ["_delay_loop_1", { kind: "cycles", each: 3, whole: 256 }],
  ["_delay_loop_2", { kind: "cycles", each: 4, whole: 65536 }],
]);

/** How a function that does nothing but wait takes its argument; undefined for other functions. */
export function delayScale(name: string): DelayScale | undefined {
  return SCALES.get(name);
}

/** What an outside call waits; undefined for one that is no delay. `clockHz` in Hz. */
export function delayOf(call: OutsideCall, clockHz: number | undefined): DelayCall | undefined {
  const scale = SCALES.get(call.name);
  if (scale === undefined) return undefined;
  const length = call.arguments[0];
  const value = numberOf(length);
  if (scale.kind === "time") return { us: value && value * scale.us, length, needsClock: false };
  if (value === undefined || clockHz === undefined) return { us: undefined, length, needsClock: true };
  const cycles = (value === 0 ? scale.whole : value) * scale.each;
  return { us: (cycles * 1e6) / clockHz, length, needsClock: true };
}
