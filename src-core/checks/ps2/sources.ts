import { formatRange, type OtherFigure, type Quantity, quantity } from "../../model/quantities.ts";
import { formatSources } from "../../model/sources.ts";

/** The quantity of this id; the model has every one that a rule names. */
export function known(id: string): Quantity {
  const found = quantity(id);
  if (found === undefined) throw new Error(`the model has no quantity ${id}`);
  return found;
}

/** Sources of a quantity, and the figures of others where they disagree; hovers say where those stand. */
export function sourcesOf(of: Quantity): string {
  const others = (of.disagreement ?? []).filter(({ sources }) => sources.length > 0);
  const figures = [...new Set(others.map((other) => otherFigure(of, other)))].filter(Boolean);
  const elsewhere = figures.length === 0 ? "" : ` (elsewhere: ${figures.join("; ")})`;
  return `${formatSources(of.sources)}${elsewhere}`;
}

function otherFigure(of: Quantity, { note: _note, sources: _sources, ...figure }: OtherFigure): string {
  const { min: _min, max: _max, typical: _typical, values: _values, ...rest } = of;
  return formatRange({ ...rest, ...figure });
}
