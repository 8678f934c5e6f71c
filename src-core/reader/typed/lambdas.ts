import type { Expression } from "../syntax/nodes.ts";
import { referenceTo, referred, unqualified } from "../types/derive.ts";
import type { FunctionType, RecordDeclaration, Type } from "../types/types.ts";
import { implicitCaptures, type Used, usedBy } from "./captures.ts";
import { declareClosure } from "./closures.ts";
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
 * A lambda expression: an object of a class of its own, whose fields hold what it captures and whose `operator()` is
 * its body. The body names captured variables themselves; the variables of captures with a value of their own, and of
 * copies that are named one by one, are the lambda's.
 */
export function typeLambda(context: Context, syntax: LambdaSyntax, at: At): TypedExpression {
  const scope = blockScope(context.scope);
  const explicit = syntax.captures.flatMap((capture) => typeCapture(context, scope, capture) ?? []);
  const written = declaredType(context, deducedType, syntax.declarator);
  const signature: FunctionType =
    written.kind === "function"
      ? written
      : { kind: "function", returns: deducedType, parameters: [], variadic: false };
  const body: BodyContext = {
    returns: isDeduced(signature.returns) ? undefined : signature.returns,
    self: context.body?.self,
  };
  const inside: Context = { unit: context.unit, passage: context.passage, scope, body };
  const parameters = declareParameters(inside, syntax.declarator);
  const block = typeBlock({ ...inside, scope: blockScope(scope) }, syntax.body);
  const returns: Type = isDeduced(signature.returns)
    ? (body.returns ?? context.unit.types.void)
    : signature.returns;
  const used: Used = usedBy(block, parameters);
  const implicit = implicitCaptures(used, explicit, syntax.captureDefault, at);
  const namesThis = syntax.captures.some(({ name }) => name === "this");
  const holdsThis = namesThis || (syntax.captureDefault !== undefined && used.self);
  const closure = declareClosure(context, [...explicit, ...implicit], holdsThis, at);
  const isPlain = closure.record.fields.length === 0;
  const symbol = new DeclaredFunction({
    phase: context.unit.phase,
    name: "operator()",
    qualifiedName: "lambda",
    linkageName: undefined,
    // Also where it is `mutable`: no other function takes its place then.
    type: { ...signature, returns, ...(isPlain ? {} : { const: true }) },
    parameterNames:
      functionPart(syntax.declarator)?.parameters.map(
        (parameter) => parameter.declarator.name?.parts[0]?.text,
      ) ?? [],
    memberOf: closure.record,
    // Without captures there is no object to work on, and a pointer to the function does as well.
    isStatic: isPlain,
    isVirtual: false,
    vector: undefined,
    special: undefined,
    isExplicit: false,
    attributes: [],
    at,
    declarationAt: at,
  });
  symbol.define(() => ({ parameters, memberInitializers: [], body: block, self: body.self }));
  closure.addCall(symbol);
  return {
    kind: "lambda",
    at,
    type: recordType(closure.record),
    lvalue: false,
    function: symbol,
    captures: closure.captures,
    self: closure.self,
  };
}

const recordType = (record: RecordDeclaration): Type => ({ kind: "record", record });

/** A capture before its field is known. */
export type CaptureDraft = Omit<TypedCapture, "field">;

function typeCapture(
  context: Context,
  scope: Scope,
  capture: LambdaSyntax["captures"][number],
): CaptureDraft | undefined {
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
  // An array is copied as a whole where it is named, and decays where it gives a value.
  const value = capture.value === undefined ? source : decayed(source);
  const type = capture.reference ? referenceTo(source.type, "lvalue") : unqualified(referred(value.type));
  const variable = localVariable(capture.name, type, at, "local");
  scope.names.set(capture.name, variable);
  return { variable, source: capture.reference ? source : value, reference: capture.reference };
}
