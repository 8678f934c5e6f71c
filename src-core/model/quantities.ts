import { plugAndPlay } from "./quantities/plug-and-play.ts";
import { ps2Bytes } from "./quantities/ps2-bytes.ts";
import { ps2HostTiming } from "./quantities/ps2-host-timing.ts";
import { ps2LineTiming } from "./quantities/ps2-line-timing.ts";
import { ps2PowerOn } from "./quantities/ps2-power-on.ts";
import { ps2Settings } from "./quantities/ps2-settings.ts";
import { ps2TimeOuts } from "./quantities/ps2-time-outs.ts";
import type { Figure, OtherFigure, Quantity } from "./quantities/quantity.ts";
import { rs232Levels } from "./quantities/rs232-levels.ts";
import { serialControlLines } from "./quantities/serial-control-lines.ts";
import { serialIdentification } from "./quantities/serial-identification.ts";
import { serialLine } from "./quantities/serial-line.ts";

export type { Figure, OtherFigure, Quantity };

/** Every quantity of both protocols, PS/2 first. */
export const quantities: readonly Quantity[] = [
  ...ps2LineTiming,
  ...ps2Bytes,
  ...ps2HostTiming,
  ...ps2TimeOuts,
  ...ps2PowerOn,
  ...ps2Settings,
  ...serialLine,
  ...serialIdentification,
  ...serialControlLines,
  ...plugAndPlay,
  ...rs232Levels,
];

const byId: ReadonlyMap<string, Quantity> = new Map(quantities.map((each) => [each.id, each]));

/** The quantity of this exact id. */
export function quantity(id: string): Quantity | undefined {
  return byId.get(id);
}

/** Whether `value`, in the quantity's unit, is one that the quantity allows. A bound is met when it is reached. */
export function allows(of: Quantity, value: number): boolean {
  if (of.values !== undefined) return of.values.includes(value);
  return (of.min === undefined || value >= of.min) && (of.max === undefined || value <= of.max);
}

/** `"at least 100 us"`, `"30 to 50 us"`, `"1200, 2400 or 4800 baud"`, `"about 500 ms"`; empty without a figure. */
export function formatRange(of: Quantity): string {
  const unit = of.unit === "none" || of.unit === "hex" ? "" : ` ${of.unit}`;
  const text = (value: number): string =>
    of.unit === "hex" ? value.toString(16).toUpperCase().padStart(2, "0") : String(value);
  if (of.values !== undefined) return `${listed(of.values.map(text))}${unit}`;
  if (of.min !== undefined && of.max !== undefined) return `${text(of.min)} to ${text(of.max)}${unit}`;
  if (of.min !== undefined) return `at least ${text(of.min)}${unit}`;
  if (of.max !== undefined) return `at most ${text(of.max)}${unit}`;
  return of.typical === undefined ? "" : `about ${text(of.typical)}${unit}`;
}

function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? "";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} or ${last}`;
}
