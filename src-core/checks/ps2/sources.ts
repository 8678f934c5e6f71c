import { formatRange, type OtherFigure, type Quantity, quantity } from "../../model/quantities.ts";
import { formatSource, formatSources } from "../../model/sources.ts";

/** The quantity of this id; the model has every one that a rule names. */
export function known(id: string): Quantity {
  const found = quantity(id);
  if (found === undefined) throw new Error(`the model has no quantity ${id}`);
  return found;
}

/** Sources of a quantity, and what others give where they disagree. */
export function sourcesOf(of: Quantity): string {
  const others = (of.disagreement ?? []).filter(({ sources }) => sources.length > 0);
  return [formatSources(of.sources), ...others.map((other) => otherwise(of, other))].join("; ");
}

function otherwise(of: Quantity, { note, sources, ...figure }: OtherFigure): string {
  const { min: _min, max: _max, typical: _typical, values: _values, ...rest } = of;
  const range = formatRange({ ...rest, ...figure });
  const [first] = sources;
  const where = first === undefined ? "" : `${formatSource(first)}`;
  return `otherwise ${range} (${note}): ${where}`;
}
