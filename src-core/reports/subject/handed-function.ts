import { bareFunction } from "../../reader/typed/bare-function.ts";
import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import { calledType } from "../../reader/types/derive.ts";
import type { FunctionType, Type } from "../../reader/types/types.ts";

/** The type of the functions that a pointer or reference of this type may mean. */
export function functionBehind(type: Type): FunctionType | undefined {
  return calledType(type.kind === "reference" ? type.to : type);
}

/** A function to hand to an encoder that calls whatever it is given; what it does is said where it is run. */
export function handedFunction(name: string, type: FunctionType, { at }: FunctionSymbol): FunctionSymbol {
  return bareFunction(name, type, at);
}
