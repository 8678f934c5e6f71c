import { plain } from "../figures.ts";
import { allows, formatRange, type OtherFigure, type Quantity } from "../model/quantities.ts";
import { formatConfidence, formatSources } from "../model/sources.ts";

/** `Required: at least 100 us, margin 20 us.`; the margin where a measured value has one. */
export function requirement(known: Quantity, measured?: number): string {
  const range = formatRange(known);
  if (range === "") return "";
  const margin =
    measured === undefined ? "" : known.values ? membership(known, measured) : marginOf(known, measured);
  const word = known.kind === "setting" ? "Required" : "Figure";
  return `${word}: ${range}${margin}.`;
}

function membership(known: Quantity, measured: number): string {
  return allows(known, measured) ? "" : `; ${plain(measured, 3)} is none of them`;
}

function marginOf({ min, max, unit }: Quantity, measured: number): string {
  const slack = Math.min(
    min === undefined ? Number.POSITIVE_INFINITY : measured - min,
    max === undefined ? Number.POSITIVE_INFINITY : max - measured,
  );
  if (!Number.isFinite(slack)) return "";
  const amount = `${plain(Math.abs(slack), 2)} ${unit}`;
  return slack < 0 ? `: ${amount} missing` : `, margin ${amount}`;
}

/** Where the figure stands, how sure it is, and what other documents say instead. */
export function sourceOf(known: Quantity): string {
  const { sources, confidence, disagreement } = known;
  const cited = [formatSources(sources), formatConfidence(confidence)].filter(Boolean).join("; ");
  const others = (disagreement ?? []).map((other) => otherText(known, other));
  return [
    cited === "" ? "" : `Source: ${cited}.`,
    others.length === 0 ? "" : `Elsewhere: ${others.join("; ")}.`,
  ]
    .filter(Boolean)
    .join("\n\n");
}

function otherText(
  { values: _, min: _min, max: _max, typical: _typical, ...rest }: Quantity,
  other: OtherFigure,
): string {
  const { min, max, typical, note, sources } = other;
  const range = formatRange({
    ...rest,
    ...(min === undefined ? {} : { min }),
    ...(max === undefined ? {} : { max }),
    ...(typical === undefined ? {} : { typical }),
  });
  const from = formatSources(sources);
  return range === "" ? `${note} (${from})` : `${range} (${note}; ${from})`;
}
