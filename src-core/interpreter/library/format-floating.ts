import { nearestExponential, nearestFixed } from "./decimal-digits.ts";

interface Form {
  readonly conversion: string;
  readonly precision: number | undefined;
  readonly alternate: boolean;
}

/** An exponent of at least two digits. */
function exponential(magnitude: number, precision: number): string {
  const { mantissa, exponent } = nearestExponential(magnitude, precision);
  return `${mantissa}e${exponent < 0 ? "-" : "+"}${String(Math.abs(exponent)).padStart(2, "0")}`;
}

function shortest(magnitude: number, precision: number, alternate: boolean): string {
  const significant = Math.max(1, precision);
  const { exponent } = nearestExponential(magnitude, significant - 1);
  const isLong = exponent < -4 || exponent >= significant;
  const text = isLong
    ? exponential(magnitude, significant - 1)
    : nearestFixed(magnitude, significant - 1 - exponent);
  if (alternate || !text.includes(".")) return text;
  return text.replace(/\.?0+(?=e|$)/, "");
}

/** The conversions e, f and g of C11 7.21.6.1p8 without the sign. */
export function floatingText(value: number, { conversion, precision = 6, alternate }: Form): string {
  const kind = conversion.toLowerCase();
  const plain = magnitudeText(Math.abs(value), kind, precision, alternate);
  const needsPoint = alternate && Number.isFinite(value) && !plain.includes(".");
  const text = needsPoint ? plain.replace(/(?=e|$)/, ".") : plain;
  return conversion === kind ? text : text.toUpperCase();
}

function magnitudeText(magnitude: number, kind: string, precision: number, alternate: boolean): string {
  if (Number.isNaN(magnitude)) return "nan";
  if (!Number.isFinite(magnitude)) return "inf";
  if (kind === "e") return exponential(magnitude, precision);
  return kind === "f" ? nearestFixed(magnitude, precision) : shortest(magnitude, precision, alternate);
}
