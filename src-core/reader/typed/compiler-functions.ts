import type { Token } from "../tokens.ts";
import { basicTypes } from "../types/basic-types.ts";
import type { DataModel, FunctionType, IntegerType } from "../types/types.ts";
import { bareFunction } from "./bare-function.ts";
import type { At, FunctionSymbol } from "./nodes.ts";

type Signature = readonly [returns: IntegerType, takes: IntegerType];

/** Functions that gcc knows without a header (gcc manual, "Other Builtins" and "AVR Built-in Functions"). */
function signatures(model: DataModel): ReadonlyMap<string, Signature> {
  const types = basicTypes(model);
  const widths = [
    ["", types.int, types.unsignedInt],
    ["l", types.long, types.unsignedLong],
    ["ll", types.longLong, types.unsignedLongLong],
  ] as const;
  const found = new Map<string, Signature>([
    ["__builtin_bswap16", [types.unsignedShort, types.unsignedShort]],
    ["__builtin_bswap32", [types.unsignedLong, types.unsignedLong]],
    ["__builtin_bswap64", [types.unsignedLongLong, types.unsignedLongLong]],
  ]);
  for (const [suffix, signed, unsigned] of widths) {
    found.set(`__builtin_ffs${suffix}`, [types.int, signed]);
    for (const name of ["clz", "ctz", "popcount", "parity"]) {
      found.set(`__builtin_${name}${suffix}`, [types.int, unsigned]);
    }
  }
  if (model.name === "avr") found.set("__builtin_avr_swap", [types.unsignedChar, types.unsignedChar]);
  return found;
}

const made = new Map<DataModel, ReadonlyMap<string, FunctionSymbol>>();

/** The compiler's own function of this name, which needs no declaration. */
export function compilerFunction(model: DataModel, name: string): FunctionSymbol | undefined {
  let functions = made.get(model);
  if (functions === undefined) {
    functions = new Map(
      [...signatures(model)].map(([each, signature]) => [each, symbolOf(each, signature)] as const),
    );
    made.set(model, functions);
  }
  return functions.get(name);
}

function symbolOf(name: string, [returns, takes]: Signature): FunctionSymbol {
  const token: Token = {
    ...{ kind: "identifier", text: name, space: false, macro: undefined },
    ...{ file: "<built-in>", start: 0, end: 0 },
  };
  const at: At = { first: token, last: token };
  const type: FunctionType = { kind: "function", returns, parameters: [takes], variadic: false };
  return {
    ...bareFunction(name, type, at),
    linkageName: name,
    parameterNames: ["value"],
    declarations: [at],
    standIn: true,
  };
}
