import { plain } from "../figures.ts";
import { formatRange, type Quantity, quantity } from "../model/quantities.ts";
import { formatConfidence, formatSources } from "../model/sources.ts";

/** What the model says of a quantity: its bounds, what others say, and where that stands. */
export function boundsOf(id: string): readonly string[] {
  const known = quantity(id);
  return known === undefined ? [] : [known.meaning, requirement(known), sourceOf(known)];
}

/** `Required: at least 100 us (margin 20 us).`; the margin where a measured value has one. */
export function requirement(known: Quantity, measured?: number): string {
  const range = formatRange(known);
  if (range === "") return "";
  const margin = measured === undefined ? "" : marginOf(known, measured);
  const word = known.kind === "setting" ? "Required" : "Figure";
  return `${word}: ${range}${margin}.`;
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
export function sourceOf({ sources, confidence, disagreement }: Quantity): string {
  const cited = [formatSources(sources), formatConfidence(confidence)].filter(Boolean).join("; ");
  const others = (disagreement ?? []).map(({ note, sources: from }) => `${note} (${formatSources(from)})`);
  return [
    cited === "" ? "" : `Source: ${cited}.`,
    others.length === 0 ? "" : `Elsewhere: ${others.join("; ")}.`,
  ]
    .filter(Boolean)
    .join("\n\n");
}
