import { formatRange, quantity } from "../../model/quantities.ts";

/** What the model allows of a quantity, as text. Throws for an id that it does not have. */
export function figureOf(id: string): string {
  const known = quantity(id);
  if (known === undefined) throw new Error(`no quantity ${id}`);
  return formatRange(known);
}
