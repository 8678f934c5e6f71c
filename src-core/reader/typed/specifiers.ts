import type { Specifiers, TypeName, TypeSpecifier } from "../syntax/nodes.ts";
import { qualify, referenceTo } from "../types/derive.ts";
import type { Type } from "../types/types.ts";
import { typeOfWords } from "../types/words.ts";
import type { Context } from "./context.ts";
import { declaredType } from "./declarators.ts";
import { enumOf } from "./enumerations.ts";
import { typeExpression } from "./expressions.ts";
import { resolveType } from "./names.ts";
import { recordOf } from "./records.ts";

/** Stands for `auto` until an initialiser or a `return` says which type it is. */
export const deducedType: Type = { kind: "unknown", name: "auto" };

/** Whether a type still waits for its deduction: `auto`, `auto &`, `const auto *`. */
export function isDeduced(type: Type): boolean {
  if (type.kind === "unknown") return type.name === "auto";
  if (type.kind === "pointer" || type.kind === "reference") return isDeduced(type.to);
  return false;
}

/**
 * The type that declaration specifiers name, qualifiers included; records and enumerations they define are
 * declared on the way. `hint` names an anonymous one: `typedef struct {...} hint;`.
 */
export function typeOfSpecifiers(context: Context, specifiers: Specifiers, hint = ""): Type {
  return qualify(typeOfSpecifier(context, specifiers.type, hint), specifiers);
}

function typeOfSpecifier(context: Context, specifier: TypeSpecifier, hint: string): Type {
  switch (specifier.kind) {
    case "words":
      return (
        typeOfWords(specifier.words, context.unit.model) ?? {
          kind: "unknown",
          name: specifier.words.join(" "),
        }
      );
    case "named":
      return resolveType(context, specifier.name);
    case "record":
      return recordOf(context, specifier.record, hint);
    case "enum":
      return enumOf(context, specifier.enumeration, hint);
    case "auto":
      return deducedType;
    case "typeof":
      return typeOfExpression(context, specifier);
    case "none":
      return context.unit.language === "c" ? context.unit.types.int : context.unit.types.void;
  }
}

/** `typeof` says what the value is, `decltype` whether it is an object as well (C++11 7.1.6.2p4). */
function typeOfExpression(
  context: Context,
  { first, expression }: Extract<TypeSpecifier, { kind: "typeof" }>,
): Type {
  const typed = typeExpression(context, expression);
  if (!/^(__)?decltype$/.test(context.passage.tokens[first]?.text ?? "")) return typed.type;
  // Parentheses leave nothing else in the tree: `decltype((x))` asks about an expression, not about x.
  const isNamed = context.passage.tokens[first + 2]?.text !== "(";
  if (isNamed && expression.kind === "name" && typed.kind === "variable") return typed.variable.type;
  if (isNamed && expression.kind === "member" && typed.kind === "member") return typed.field.type;
  return typed.lvalue && typed.kind !== "function" ? referenceTo(typed.type, "lvalue") : typed.type;
}

/** The type that a type name in a cast, `sizeof` or template argument means. */
export function typeOfTypeName(context: Context, name: TypeName): Type {
  return declaredType(context, typeOfSpecifiers(context, name.specifiers), name.declarator);
}
