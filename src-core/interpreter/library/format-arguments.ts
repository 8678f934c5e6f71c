import type { DataModel } from "../../reader/types/types.ts";
import type { TargetMemory } from "../outcome.ts";
import { readUnsigned } from "./target-text.ts";
import type { Passed } from "./values.ts";

/** What stands behind a format, taken one by one. */
export interface FormatArguments {
  /** The next integer or pointer of this many bytes, as an unsigned one. */
  integer(bytes: number): bigint;
  /** The next `double`. */
  floating(): number;
}

/** Arguments as a call passes them. */
export function passedArguments(parameters: Passed, first: number): FormatArguments {
  let next = first;
  return {
    integer(bytes) {
      const value = parameters[next] ?? 0;
      next += 1;
      return BigInt.asUintN(8 * bytes, BigInt(typeof value === "number" ? Math.trunc(value) || 0 : value));
    },
    floating() {
      const value = Number(parameters[next] ?? 0);
      next += 1;
      return value;
    },
  };
}

/** Arguments of a `va_list`: they lie one after the other, as avr-gcc passes them. */
export function listedArguments(memory: TargetMemory, list: number, model: DataModel): FormatArguments {
  let next = list;
  const take = (bytes: number): bigint => {
    const low = BigInt(readUnsigned(memory, next, Math.min(bytes, 4)));
    const high = bytes > 4 ? BigInt(readUnsigned(memory, next + 4, bytes - 4)) : 0n;
    next += bytes;
    return low | (high << 32n);
  };
  return {
    integer: take,
    floating() {
      const view = new DataView(new ArrayBuffer(8));
      const bytes = model.double / 8;
      view.setBigUint64(0, take(bytes), true);
      return bytes === 4 ? view.getFloat32(0, true) : view.getFloat64(0, true);
    },
  };
}
