import type { Expression, TypeName } from "../syntax/nodes.ts";
import { hasOwnWidth } from "../types/conversions.ts";
import { alignmentOf, sizeOf } from "../types/layout.ts";
import { typeText } from "../types/text.ts";
import type { Type } from "../types/types.ts";
import type { Context } from "./context.ts";
import { typeExpression } from "./expressions.ts";
import { findField } from "./fields.ts";
import { integerNode, unresolved } from "./make.ts";
import type { At, TypedExpression } from "./nodes.ts";
import { typeOfTypeName } from "./specifiers.ts";

/** `sizeof` as the number it is, of the size type (C11 6.5.3.4p5); GNU's 1 for `void` and functions. */
function sizeNode(context: Context, type: Type, at: At): TypedExpression {
  if (type.kind === "integer" && hasOwnWidth(type))
    return unresolved(at, "", "other", [], "the size of arithmetic on a wide bit-field");
  const size = type.kind === "void" || type.kind === "function" ? 1 : sizeOf(type, context.unit.model);
  if (size === undefined) {
    return unresolved(at, "", "other", [], `the size of \`${typeText(type)}\` is not known`);
  }
  return integerNode(at, BigInt(size), context.unit.types.size);
}

export function typeSizeofType(context: Context, name: TypeName, at: At): TypedExpression {
  return sizeNode(context, typeOfTypeName(context, name), at);
}

export function typeSizeofValue(context: Context, operand: Expression, at: At): TypedExpression {
  return sizeNode(context, typeExpression(context, operand).type, at);
}

export function typeAlignof(context: Context, name: TypeName, at: At): TypedExpression {
  const type = typeOfTypeName(context, name);
  return integerNode(at, BigInt(alignmentOf(type, context.unit.model)), context.unit.types.size);
}

/** `offsetof(T, a.b[2].c)`, the member written as one text. */
export function typeOffsetof(context: Context, name: TypeName, member: string, at: At): TypedExpression {
  let type = typeOfTypeName(context, name);
  let bits = 0;
  for (const step of member.match(/[A-Za-z_]\w*|\[\s*\d+\s*\]/g) ?? []) {
    if (step.startsWith("[")) {
      if (type.kind !== "array") return unknownOffset(type, member, at);
      type = type.of;
      bits += Number.parseInt(step.slice(1), 10) * 8 * (sizeOf(type, context.unit.model) ?? 0);
      continue;
    }
    const found = type.kind === "record" ? findField(type.record, step) : undefined;
    if (found === undefined) return unknownOffset(type, member, at);
    for (const field of found.path) {
      bits += field.bitOffset;
      type = field.type;
    }
  }
  return integerNode(at, BigInt(Math.floor(bits / 8)), context.unit.types.size);
}

function unknownOffset(type: Type, member: string, at: At): TypedExpression {
  return unresolved(at, member, "other", [], `\`${typeText(type)}\` has no known member \`${member}\``);
}
