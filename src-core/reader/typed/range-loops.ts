import type { Statement } from "../syntax/nodes.ts";
import { arrayOf, pointerTo, referenceTo } from "../types/derive.ts";
import type { Type } from "../types/types.ts";
import { binary } from "./binary-operators.ts";
import { atOf, type Context, inScope, refer } from "./context.ts";
import { declaredType } from "./declarators.ts";
import { deducedFromTyped } from "./deduction.ts";
import { typeExpression } from "./expressions.ts";
import { localVariable } from "./functions.ts";
import { initializerFromTyped } from "./initializers.ts";
import { decayed, integerNode, unknownType, unresolved, valueType } from "./make.ts";
import { methodCall } from "./method-calls.ts";
import { variableNode } from "./name-expressions.ts";
import type { At, RangeIteration, TypedExpression, TypedStatement, Variable } from "./nodes.ts";
import { bestCandidate } from "./overloads.ts";
import { blockScope, lookupHere } from "./scope.ts";
import { isDeduced, typeOfSpecifiers } from "./specifiers.ts";
import { typeStatement } from "./statements.ts";
import type { DeclaredVariable } from "./symbols.ts";
import { condition } from "./truth.ts";
import { indirection, update } from "./unary-operators.ts";

type RangeFor = Extract<Statement, { kind: "range-for" }>;

/** A range `for`, with what it stands for written out (C++11 6.5.4). */
export function typeRangeFor(context: Context, statement: RangeFor): TypedStatement {
  const at = atOf(context, statement);
  const inside = inScope(context, blockScope(context.scope));
  const range = typeExpression(inside, statement.range);
  const begun = begin(inside, range);
  const element = begun?.element ?? unresolved(range.at, "", "other", [], "an element of this range");
  const variable = elementVariable(inside, statement, element);
  variable.initializer = initializerFromTyped(inside, variable.type, element);
  const iteration = begun?.iteration;
  return { kind: "range-for", at, variable, range, iteration, body: typeStatement(inside, statement.body) };
}

interface Begun {
  readonly iteration: RangeIteration;
  readonly element: TypedExpression;
}

/** The variables that step through a range; undefined for one that is neither an array nor has `begin` and `end`. */
function begin(context: Context, range: TypedExpression): Begun | undefined {
  const { at, type } = range;
  const whole = hidden("range", referenceTo(type, range.lvalue ? "lvalue" : "rvalue"), range);
  const object = variableNode(whole, at);
  const ends = type.kind === "array" ? endsOfArray(object, type, at, context) : endsOfObject(context, object);
  if (ends === undefined) return undefined;
  const first = hidden("begin", valueType(ends.first), ends.first);
  const last = hidden("end", valueType(ends.last), ends.last);
  const here = variableNode(first, at);
  return {
    element: indirection(context, here, at),
    iteration: {
      variables: [whole, first, last],
      condition: condition(context, binary(context, "!=", here, variableNode(last, at), at)),
      step: update(context, "++", "prefix", here, at),
    },
  };
}

interface Ends {
  readonly first: TypedExpression;
  readonly last: TypedExpression;
}

function endsOfArray(
  array: TypedExpression,
  type: Extract<Type, { kind: "array" }>,
  at: At,
  context: Context,
): Ends | undefined {
  if (type.length === undefined) return undefined;
  const first = decayed({ ...array, type: arrayOf(type.of, type.length) });
  const length = integerNode(at, BigInt(type.length), context.unit.types.int);
  return {
    first,
    last: {
      kind: "pointer-offset",
      at,
      type: pointerTo(type.of),
      lvalue: false,
      operator: "+",
      pointer: first,
      offset: length,
    },
  };
}

function endsOfObject(context: Context, object: TypedExpression): Ends | undefined {
  const first = callOf(context, object, "begin");
  const last = callOf(context, object, "end");
  return first === undefined || last === undefined ? undefined : { first, last };
}

function callOf(context: Context, object: TypedExpression, name: string): TypedExpression | undefined {
  if (object.type.kind !== "record") return undefined;
  const scope = context.unit.classes.get(object.type.record)?.scope;
  const entry = scope && lookupHere(scope, name);
  const method =
    entry?.kind === "overloads" ? bestCandidate(context, entry.functions, [], object)?.symbol : undefined;
  return method && methodCall(context, object, method, [], object.at);
}

/** A variable that the loop has and the source does not name. */
function hidden(name: string, type: Type, value: TypedExpression): Variable {
  const variable = localVariable(name, type, value.at, "local");
  variable.initializer = { kind: "value", at: value.at, value };
  return variable;
}

function elementVariable(context: Context, statement: RangeFor, element: TypedExpression): DeclaredVariable {
  const name = statement.declarator.name?.parts[0];
  const declared = declaredType(
    context,
    typeOfSpecifiers(context, statement.specifiers),
    statement.declarator,
  );
  const type = isDeduced(declared)
    ? element.kind === "unresolved"
      ? unknownType
      : deducedFromTyped(declared, element)
    : declared;
  const at = atOf(context, name ?? statement.declarator);
  const variable = localVariable(name?.text ?? "", type, at, "local");
  if (name !== undefined) {
    context.scope.names.set(name.text, variable);
    refer(context, name, variable);
  }
  context.passage.locals.push(variable);
  return variable;
}
