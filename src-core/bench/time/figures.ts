import { type Figure, type Quantity, quantity } from "../../model/quantities.ts";
import type { DocumentName } from "../../model/sources.ts";
import { ms, ns, second, type Time, us } from "./time.ts";

type Bound = "min" | "typical" | "max";

/** A duration of the model. Throws where the model has none: a mistake in a table of the bench. */
export function figure(id: string, bound: Bound): Time {
  const of = known(id);
  return duration(of, of, bound);
}

/** The duration that another document gives, where documents disagree. Throws where it gives none. */
export function figureOf(document: DocumentName, id: string, bound: Bound): Time {
  const of = known(id);
  const other = of.disagreement?.find((each) => each.sources.some((source) => source.document === document));
  if (other === undefined) throw new Error(`the model has no other figure of ${id} from ${document}`);
  return duration(of, other, bound);
}

/** The duration that the model has from memory beside its own. Throws where there is none. */
export function rememberedFigure(id: string, bound: Bound): Time {
  const of = known(id);
  const other = of.disagreement?.find((each) => each.sources.length === 0);
  if (other === undefined) throw new Error(`the model has no figure of ${id} from memory`);
  return duration(of, other, bound);
}

/** One of the quantity's unit as a duration. Throws where it is no unit of time. */
export function unitOf({ id, unit }: Quantity): Time {
  switch (unit) {
    case "ns":
      return ns;
    case "us":
      return us;
    case "ms":
      return ms;
    case "s":
      return second;
    default:
      throw new Error(`${id} is no duration but in ${unit}`);
  }
}

/** The quantity of this id. Throws where there is none. */
export function known(id: string): Quantity {
  const of = quantity(id);
  if (of === undefined) throw new Error(`the model has no ${id}`);
  return of;
}

function duration(of: Quantity, from: Figure, bound: Bound): Time {
  const value = from[bound];
  if (value === undefined) throw new Error(`the model has no ${bound} of ${of.id}`);
  return value * unitOf(of);
}
