import type { Expression } from "../syntax/nodes.ts";
import { pointerTo, referenceTo } from "../types/derive.ts";
import type { FunctionType, Type } from "../types/types.ts";
import { atOf, type BodyContext, type Context } from "./context.ts";
import { declaredType, functionPart } from "./declarators.ts";
import { typeExpression } from "./expressions.ts";
import { declareParameters, localVariable } from "./functions.ts";
import { decayed } from "./make.ts";
import { variableNode } from "./name-expressions.ts";
import type { At, TypedCapture, TypedExpression } from "./nodes.ts";
import { blockScope, lookup, type Scope } from "./scope.ts";
import { deducedType, isDeduced } from "./specifiers.ts";
import { typeBlock } from "./statements.ts";
import { DeclaredFunction } from "./symbols.ts";

type LambdaSyntax = Extract<Expression, { kind: "lambda" }>;

/**
 * A lambda expression, as a pointer to a function of its own. What it captures by reference it names
 * directly; captured copies are variables of its own.
 */
export function typeLambda(context: Context, syntax: LambdaSyntax, at: At): TypedExpression {
  const scope = blockScope(context.scope);
  const captures = syntax.captures.flatMap((capture) => typeCapture(context, scope, capture) ?? []);
  const written = declaredType(context, deducedType, syntax.declarator);
  const signature: FunctionType =
    written.kind === "function"
      ? written
      : { kind: "function", returns: deducedType, parameters: [], variadic: false };
  const body: BodyContext = {
    returns: isDeduced(signature.returns) ? undefined : signature.returns,
    self: context.body?.self,
  };
  const inside: Context = { unit: context.unit, tokens: context.tokens, scope, body };
  const parameters = declareParameters(inside, syntax.declarator);
  const block = typeBlock({ ...inside, scope: blockScope(scope) }, syntax.body);
  const returns: Type = isDeduced(signature.returns)
    ? (body.returns ?? context.unit.types.void)
    : signature.returns;
  const symbol = new DeclaredFunction({
    name: "",
    qualifiedName: "lambda",
    linkageName: undefined,
    type: { ...signature, returns },
    parameterNames:
      functionPart(syntax.declarator)?.parameters.map(
        (parameter) => parameter.declarator.name?.parts[0]?.text,
      ) ?? [],
    memberOf: undefined,
    isStatic: false,
    isVirtual: false,
    vector: undefined,
    special: undefined,
    attributes: [],
    at,
    declarationAt: at,
  });
  symbol.define(() => ({ parameters, memberInitializers: [], body: block, self: body.self }));
  const copiesImplicitly = syntax.captureDefault === "copy";
  return {
    kind: "lambda",
    at,
    type: pointerTo(symbol.type),
    lvalue: false,
    function: symbol,
    captures,
    copiesImplicitly,
  };
}

function typeCapture(
  context: Context,
  scope: Scope,
  capture: LambdaSyntax["captures"][number],
): TypedCapture | undefined {
  const at = atOf(context, capture);
  const entry = lookup(context.scope, capture.name);
  const source =
    capture.value !== undefined
      ? typeExpression(context, capture.value)
      : entry?.kind === "variable"
        ? variableNode(entry, at)
        : undefined;
  if (source === undefined) return undefined;
  if (capture.reference && capture.value === undefined && entry?.kind === "variable") {
    return { variable: entry, source, reference: true };
  }
  const value = decayed(source);
  const type = capture.reference ? referenceTo(source.type, "lvalue") : value.type;
  const variable = localVariable(capture.name, type, at, "local");
  scope.names.set(capture.name, variable);
  return { variable, source: capture.reference ? source : value, reference: capture.reference };
}
