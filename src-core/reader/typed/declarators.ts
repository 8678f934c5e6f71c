import { evaluate } from "../constants/evaluate.ts";
import type { Declarator, DeclaratorPart, Expression, Parameter } from "../syntax/nodes.ts";
import { arrayOf, pointerTo, qualify, referenceTo, unqualified } from "../types/derive.ts";
import type { FunctionType, Type } from "../types/types.ts";
import { atOf, type Context, inScope } from "./context.ts";
import { typeExpression } from "./expressions.ts";
import { localVariable } from "./functions.ts";
import { elementContexts } from "./packs.ts";
import { blockScope } from "./scope.ts";
import { typeOfSpecifiers, typeOfTypeName } from "./specifiers.ts";

/** The largest array that any target of the reader could hold. */
const largestLength = 0x1_0000_0000n;

/** The value of an array length or bit-field width; undefined where it is no constant from 0 up. */
export function constantCount(context: Context, expression: Expression | undefined): number | undefined {
  if (expression === undefined) return undefined;
  const value = evaluate(typeExpression(context, expression), context.unit.model);
  if (value.kind !== "integer" || value.value < 0n || value.value > largestLength) return undefined;
  return Number(value.value);
}

/** A parameter's type as the function sees it: arrays and functions are pointers (C11 6.7.6.3p7, p8). */
export function parameterType(context: Context, parameter: Parameter): Type {
  const base = typeOfSpecifiers(context, parameter.specifiers);
  const type = declaredType(context, base, parameter.declarator);
  if (type.kind === "array") return pointerTo(type.of);
  return type.kind === "function" ? pointerTo(type) : type;
}

/** Where a parameter is read: once, or for a pack once for each of its elements. */
export function contextsOf(context: Context, parameter: Parameter): readonly Context[] {
  return parameter.pack ? (elementContexts(context, parameter) ?? []) : [context];
}

/** A trailing return type sees the parameters: `-> decltype(a + b)` (C++11 3.3.4). */
function seeingParameters(context: Context, part: Extract<DeclaratorPart, { kind: "function" }>): Context {
  const inside = inScope(context, blockScope(context.scope));
  for (const parameter of part.parameters) {
    const name = parameter.declarator.name?.parts[0]?.text;
    if (name === undefined) continue;
    const at = atOf(context, parameter);
    const [only, ...others] = contextsOf(context, parameter).map((each) =>
      localVariable(name, parameterType(each, parameter), at, "parameter"),
    );
    if (only !== undefined && others.length === 0 && !parameter.pack) inside.scope.names.set(name, only);
    else
      inside.scope.names.set(name, {
        kind: "pack",
        elements: only === undefined ? [] : [only, ...others],
      });
  }
  return inside;
}

function functionType(
  context: Context,
  returns: Type,
  part: Extract<DeclaratorPart, { kind: "function" }>,
): FunctionType {
  const parameters = part.parameters.flatMap((parameter) =>
    contextsOf(context, parameter).map((inside) => unqualified(parameterType(inside, parameter))),
  );
  const only = parameters.length === 1 ? parameters[0] : undefined;
  return {
    kind: "function",
    returns:
      part.trailingReturn === undefined
        ? returns
        : typeOfTypeName(seeingParameters(context, part), part.trailingReturn),
    parameters: only?.kind === "void" ? [] : parameters,
    variadic: part.variadic,
    ...(part.const ? { const: true } : {}),
  };
}

function applyPart(context: Context, type: Type, part: DeclaratorPart): Type {
  switch (part.kind) {
    case "pointer":
      return qualify(pointerTo(type), part);
    case "reference":
      return referenceTo(type, part.rvalue ? "rvalue" : "lvalue");
    case "array":
      return arrayOf(type, constantCount(context, part.length));
    case "function":
      return functionType(context, type, part);
  }
}

/** The type of a declared name: the parts around it applied to the specifiers' type, from outside in. */
export function declaredType(context: Context, base: Type, declarator: Declarator): Type {
  let type = base;
  for (let index = declarator.parts.length - 1; index >= 0; index -= 1) {
    const part = declarator.parts[index];
    if (part !== undefined) type = applyPart(context, type, part);
  }
  return type;
}

/** The parameter list where the declarator declares a function (and not a pointer to one). */
export function functionPart(
  declarator: Declarator,
): Extract<DeclaratorPart, { kind: "function" }> | undefined {
  const part = declarator.parts[0];
  return part?.kind === "function" ? part : undefined;
}
