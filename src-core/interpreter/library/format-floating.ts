interface Form {
  readonly conversion: string;
  readonly precision: number | undefined;
  readonly alternate: boolean;
}

/** An exponent of at least two digits. */
function exponential(magnitude: number, precision: number): string {
  const [digits = "", exponent = "0"] = magnitude.toExponential(Math.min(precision, 100)).split("e");
  return `${digits}e${exponent.startsWith("-") ? "-" : "+"}${exponent.replace(/^[-+]/, "").padStart(2, "0")}`;
}

function fixed(magnitude: number, precision: number): string {
  if (magnitude < 1e21) return magnitude.toFixed(Math.min(precision, 100));
  return `${BigInt(magnitude)}${precision === 0 ? "" : `.${"0".repeat(precision)}`}`;
}

function shortest(magnitude: number, precision: number, alternate: boolean): string {
  const significant = Math.max(1, precision);
  const exponent = Number(magnitude.toExponential(Math.min(significant - 1, 100)).split("e")[1]);
  const isLong = exponent < -4 || exponent >= significant;
  const text = isLong
    ? exponential(magnitude, significant - 1)
    : fixed(magnitude, significant - 1 - exponent);
  if (alternate || !text.includes(".")) return text;
  return text.replace(/\.?0+(?=e|$)/, "");
}

/** The conversions e, f and g of C11 7.21.6.1p8 without the sign. */
export function floatingText(value: number, { conversion, precision = 6, alternate }: Form): string {
  const magnitude = Math.abs(value);
  const kind = conversion.toLowerCase();
  const text = Number.isNaN(value)
    ? "nan"
    : !Number.isFinite(value)
      ? "inf"
      : kind === "e"
        ? exponential(magnitude, precision)
        : kind === "f"
          ? fixed(magnitude, precision)
          : shortest(magnitude, precision, alternate);
  return conversion === kind ? text : text.toUpperCase();
}
