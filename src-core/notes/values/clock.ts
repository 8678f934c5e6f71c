/** Units a clock may carry, in hertz. */
const CLOCK_UNITS: Readonly<Record<string, number>> = { Hz: 1, kHz: 1e3, MHz: 1e6 };

/** A number above zero and its unit without white space: `16MHz`, `7.3728MHz`, `32768Hz`. */
export const CLOCK_PATTERN = "^(?![0.]+[A-Za-z])[0-9]+(\\.[0-9]+)?(Hz|kHz|MHz)$";

/** A clock in Hz, above zero; undefined where `text` is not a number with one of the units. */
export function parseClock(text: string): number | undefined {
  const parts = /^(\d+(?:\.\d+)?)([A-Za-z]+)$/.exec(text);
  const scale = CLOCK_UNITS[parts?.[2] ?? ""];
  if (parts === null || scale === undefined) return undefined;
  const hertz = Number((Number(parts[1]) * scale).toPrecision(12));
  return hertz > 0 && Number.isFinite(hertz) ? hertz : undefined;
}

/** `16MHz`, `32768Hz`: the largest unit that leaves at most four decimals. */
export function formatClock(hertz: number): string {
  for (const unit of ["MHz", "kHz"]) {
    const scaled = hertz / (CLOCK_UNITS[unit] ?? 1);
    if (scaled >= 1 && Number(scaled.toFixed(4)) === scaled) return `${scaled}${unit}`;
  }
  return `${hertz}Hz`;
}

/** What was probably meant by a clock that cannot be read, `16mhz` or `16000000`; undefined for a riddle. */
export function repairedClock(text: string): string | undefined {
  const parts = /^(\d+(?:\.\d+)?)\s*([A-Za-z]*)$/.exec(text);
  if (parts === null) return undefined;
  const [, digits = "", unit = ""] = parts;
  if (unit === "") return formatWhole(digits);
  const letter = unit.charAt(0).toLowerCase();
  const meant = letter === "m" ? "MHz" : letter === "k" ? "kHz" : letter === "h" ? "Hz" : undefined;
  const repaired = meant === undefined ? undefined : `${digits}${meant}`;
  return repaired === undefined || parseClock(repaired) === undefined ? undefined : repaired;
}

/** Up to three digits without a unit are taken as MHz: no such chip runs below 1 kHz. */
function formatWhole(digits: string): string | undefined {
  const value = Number(digits);
  if (value <= 0) return undefined;
  return value < 1000 ? `${digits}MHz` : formatClock(value);
}
