import { pointerTo, qualify, referenceTo } from "../types/derive.ts";
import type { Type } from "../types/types.ts";
import { unknownType, valueType } from "./make.ts";
import type { TypedExpression } from "./nodes.ts";

/** The declared type with `auto` in it replaced by what the value is (C++11 7.1.6.4p6): `const auto &`, `auto *`. */
export function deducedFromTyped(type: Type, value: TypedExpression): Type {
  switch (type.kind) {
    case "unknown":
      return type.name === "auto" ? qualify(valueType(value), qualifiers(type)) : type;
    case "reference":
      return referenceTo(referent(type.to, value), value.lvalue || !type.rvalue ? "lvalue" : "rvalue");
    case "pointer": {
      const pointer = valueType(value);
      if (pointer.kind !== "pointer") return unknownType;
      return qualify(
        pointerTo(type.to.kind === "unknown" ? qualify(pointer.to, qualifiers(type.to)) : type.to),
        qualifiers(type),
      );
    }
    default:
      return type;
  }
}

function referent(type: Type, value: TypedExpression): Type {
  if (type.kind !== "unknown") return type;
  return qualify(value.type, qualifiers(type));
}

function qualifiers(type: Type): { readonly const: boolean; readonly volatile: boolean } {
  return { const: type.const === true, volatile: type.volatile === true };
}
