import type { FunctionType } from "../types/types.ts";
import type { At, FunctionSymbol } from "./nodes.ts";

/** A function of which no source says more than what it takes and returns. */
export function bareFunction(name: string, type: FunctionType, at: At): FunctionSymbol {
  return {
    kind: "function",
    name,
    qualifiedName: name,
    linkageName: undefined,
    type,
    parameterNames: [],
    memberOf: undefined,
    isStatic: false,
    isVirtual: false,
    vector: undefined,
    special: undefined,
    bodyless: undefined,
    defaults: [],
    attributes: [],
    at,
    declarationAt: at,
    declarations: [],
    definition: undefined,
    standIn: false,
  };
}
