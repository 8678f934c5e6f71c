import { hexText } from "../figures.ts";
import type { Limit, Measured, Unit } from "../finding.ts";

/** "100 us", "4.17 %", "0xF3"; at most four significant digits behind the point. */
export function quantityInWords(value: number, unit: Unit): string {
  switch (unit) {
    case "hex":
      return hexText(value);
    case "none":
      return figure(value);
    default:
      return `${figure(value)} ${unit}`;
  }
}

/** "at least 100 us", "1 to 10 ms"; undefined for a limit without a bound. */
export function limitInWords({ atLeast, atMost, unit }: Limit): string | undefined {
  if (atLeast !== undefined && atMost !== undefined) {
    return `${figure(atLeast)} to ${quantityInWords(atMost, unit)}`;
  }
  if (atLeast !== undefined) return `at least ${quantityInWords(atLeast, unit)}`;
  if (atMost !== undefined) return `at most ${quantityInWords(atMost, unit)}`;
  return undefined;
}

export function measuredInWords(measured: Measured): string {
  return quantityInWords(measured.value, measured.unit);
}

function figure(value: number): string {
  if (!Number.isFinite(value)) return String(value);
  return String(Number.isInteger(value) ? value : Number(value.toPrecision(4)));
}
