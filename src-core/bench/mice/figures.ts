import { type Figure, type Quantity, quantity } from "../../model/quantities.ts";
import type { DocumentName } from "../../model/sources.ts";
import { ms, second, type Time, us } from "../time/time.ts";

/** A duration that is drawn anew each time, both ends included. */
export interface Spread {
  readonly least: Time;
  readonly most: Time;
}

export function exactly(time: Time): Spread {
  return { least: time, most: time };
}

export function between(least: Time, most: Time): Spread {
  return { least, most };
}

type Bound = "min" | "typical" | "max";

/** A duration of the model. Throws where the model has none: a mouse without its figures is no mouse. */
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

function known(id: string): Quantity {
  const of = quantity(id);
  if (of === undefined) throw new Error(`the model has no ${id}`);
  return of;
}

function duration(of: Quantity, from: Figure, bound: Bound): Time {
  const value = from[bound];
  if (value === undefined) throw new Error(`the model has no ${bound} of ${of.id}`);
  switch (of.unit) {
    case "us":
      return value * us;
    case "ms":
      return value * ms;
    case "s":
      return value * second;
    default:
      throw new Error(`${of.id} is no duration but in ${of.unit}`);
  }
}
