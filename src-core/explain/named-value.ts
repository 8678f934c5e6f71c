import { constantValue, valueTelling } from "./constant.ts";
import { type Explanation, explanation } from "./explanation.ts";
import { namedConstantAt } from "./named-constant.ts";
import type { Place } from "./place.ts";
import { namedRegister } from "./register.ts";

/** The name of a constant where it is declared, or within another macro: the register or the value it stands for. */
export function explainNamedConstant(place: Place): Explanation | undefined {
  const constant = namedConstantAt(place);
  if (constant?.value === undefined || constant.part === "value") return undefined;
  const { name, value, span } = constant;
  if ("enumeration" in value) {
    if (value.value === undefined) return undefined;
    const told = valueTelling(value.value, value.type, name);
    return explanation(span, told.heading, told.lines);
  }
  const told = namedRegister(place, value) ?? constantValue(place, value, name);
  return told && explanation(span, told.heading, told.lines);
}
