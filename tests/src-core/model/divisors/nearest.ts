import { expect } from "vitest";
import { type BaudGenerator, baudGeneratorNamed } from "../../../../src-core/model/baud-generators.ts";

export interface Found {
  readonly sampling: string;
  readonly value: number;
  readonly actualBaud: number;
  readonly errorPercent: number;
  readonly registers: Readonly<Record<string, number>>;
}

export function generator(id: string): BaudGenerator {
  const found = baudGeneratorNamed(id);
  if (found === undefined) throw new Error(`no generator ${id}`);
  return found;
}

/** The nearest setting; fails the test where there is none. */
export function nearest(of: BaudGenerator, clockHz: number, baud: number, sampling?: string): Found {
  const found = of.nearest(clockHz, baud, sampling);
  if (found.kind === "out-of-range") return expect.fail(found.reason);
  return {
    sampling: found.setting.sampling,
    value: found.setting.value,
    actualBaud: found.actualBaud,
    errorPercent: found.errorPercent,
    registers: Object.fromEntries(of.registersOf(found.setting).map(({ name, value }) => [name, value])),
  };
}

/** Error of a value that a table prints, nearest or not. */
export function errorOf(
  of: BaudGenerator,
  clockHz: number,
  baud: number,
  setting: { readonly sampling: string; readonly value: number },
): number {
  const actual = of.actualBaud(clockHz, setting);
  if (actual === undefined) return expect.fail(`${setting.value} is out of range`);
  return (actual / baud - 1) * 100;
}

/** Rounds as tables print, `digits` decimals; never gives minus zero. */
export function printed(percent: number, digits: number): number {
  return Number(percent.toFixed(digits)) + 0;
}
