import { type Quantity, quantity } from "../../model/quantities.ts";

type Bound = "min" | "typical" | "max";

/** A figure of the model in milliseconds. Throws where the model has none: a mistake in a table of this folder. */
export function milliseconds(id: string, bound: Bound): number {
  const found = known(id);
  return scaled(found, found[bound]);
}

/** The longest of all that the model's sources give, in milliseconds. */
export function longestMilliseconds(id: string): number {
  const found = known(id);
  const all = [found, ...(found.disagreement ?? [])].flatMap(({ typical, max }) => [typical, max]);
  const figures = all.filter((each) => each !== undefined);
  return scaled(found, figures.length === 0 ? undefined : Math.max(...figures));
}

function known(id: string): Quantity {
  const found = quantity(id);
  if (found === undefined) throw new Error(`the model has no quantity ${id}`);
  return found;
}

function scaled({ id, unit }: Quantity, value: number | undefined): number {
  if (value === undefined) throw new Error(`${id} has no such figure`);
  if (unit === "ms") return value;
  if (unit === "s") return value * 1000;
  throw new Error(`${id} is in ${unit}, not a time`);
}
