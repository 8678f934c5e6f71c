import type { Expression } from "../syntax/nodes.ts";
import { arrayOf, pointerTo, qualify, referred, unqualified } from "../types/derive.ts";
import type { Type } from "../types/types.ts";
import { typeAssign } from "./assignments.ts";
import { typeBinary } from "./binary-operators.ts";
import { typeCall } from "./calls.ts";
import { typeCast, typeCompound } from "./casts.ts";
import { readCharacter, readString } from "./characters.ts";
import { typeConditional } from "./conditional.ts";
import { atOf, type Context, deepest, inScope } from "./context.ts";
import { initializerFrom } from "./initializers.ts";
import { typeLambda } from "./lambdas.ts";
import { readNumber } from "./literals.ts";
import { decayed, integerNode, unresolved } from "./make.ts";
import { typeMember } from "./members.ts";
import { typeName } from "./name-expressions.ts";
import { typeDelete, typeNew } from "./new.ts";
import type { At, TypedBlock, TypedExpression } from "./nodes.ts";
import { elementContexts } from "./packs.ts";
import { blockScope, lookup } from "./scope.ts";
import { typeAlignof, typeOffsetof, typeSizeofType, typeSizeofValue } from "./sizes.ts";
import { typeOfTypeName } from "./specifiers.ts";
import { typeBlock } from "./statements.ts";
import { typeIndex } from "./subscripts.ts";
import { typeUnary, typeUpdate } from "./unary-operators.ts";

/**
 * Types an expression. `expected` is the type its place asks for, where there is one: a braced list means
 * nothing without it. Never throws; what has no meaning becomes `unresolved`.
 */
export function typeExpression(context: Context, expression: Expression, expected?: Type): TypedExpression {
  const { unit } = context;
  if (unit.depth >= deepest)
    return unresolved(atOf(context, expression), "", "other", [], "nested too deeply");
  unit.depth += 1;
  const typed = typeAny(context, expression, expected);
  unit.depth -= 1;
  return typed;
}

function typeAny(context: Context, expression: Expression, expected: Type | undefined): TypedExpression {
  const at = atOf(context, expression);
  switch (expression.kind) {
    case "number":
      return typeNumber(context, expression.text, at);
    case "character": {
      const { value, type } = readCharacter(expression.text, context.unit.language, context.unit.types);
      return integerNode(at, value, type);
    }
    case "string":
      return typeString(context, expression.parts, at);
    case "boolean":
      return integerNode(at, expression.value ? 1n : 0n, context.unit.types.bool);
    case "nullptr":
      return integerNode(at, 0n, pointerTo(context.unit.types.void));
    case "this":
      return typeThis(context, at);
    case "name":
      return typeName(context, expression.name, at, expected);
    case "unary":
      return typeUnary(context, expression, at);
    case "update":
      return typeUpdate(context, expression, at);
    case "binary":
      return typeBinary(context, expression, at);
    case "assign":
      return typeAssign(context, expression, at);
    case "conditional":
      return typeConditional(context, expression, at);
    case "call":
      return typeCall(context, expression, at);
    case "index":
      return typeIndex(context, expression, at);
    case "member":
      return typeMember(context, expression, at);
    case "cast":
      return typeCast(context, expression, at);
    case "sizeof-type":
      return typeSizeofType(context, expression.type, at);
    case "sizeof-value":
      return typeSizeofValue(context, expression.operand, at);
    case "pack-length": {
      const entry = lookup(context.scope, expression.name);
      if (entry?.kind !== "pack") return unresolved(at, expression.name, "name", [], "the length of no pack");
      return integerNode(at, BigInt(entry.elements.length), context.unit.types.size);
    }
    case "pack-element": {
      const inside = elementContexts(context, expression.pattern)?.[expression.index];
      if (inside === undefined) return unresolved(at, "", "other", [], "an expansion here");
      return typeExpression(inside, expression.pattern, expected);
    }
    case "expansion":
      return unresolved(at, "", "other", [], "an expansion here");
    case "alignof":
      return typeAlignof(context, expression.type, at);
    case "offsetof":
      return typeOffsetof(context, expression.type, expression.member, at);
    case "next-argument": {
      const type = unqualified(typeOfTypeName(context, expression.type));
      const operand = typeExpression(context, expression.list);
      return { kind: "next-argument", at, type, lvalue: false, operand };
    }
    case "list":
      return typeList(context, expression, expected, at);
    case "compound":
      return typeCompound(context, expression, at);
    case "lambda":
      return typeLambda(context, expression, at);
    case "new":
      return typeNew(context, expression, at);
    case "delete":
      return typeDelete(context, expression, at);
    case "statement-value":
      return typeStatementValue(context, expression, at);
    case "not-understood":
      return unresolved(at, "", "other", [], expression.what);
  }
}

function typeNumber(context: Context, text: string, at: At): TypedExpression {
  const literal = readNumber(text, context.unit.types);
  switch (literal.kind) {
    case "integer":
      return integerNode(at, literal.value, literal.type);
    case "floating":
      return { kind: "floating", at, type: literal.type, lvalue: false, value: literal.value };
    case "malformed":
      return unresolved(at, text, "other", [], literal.what);
  }
}

function typeString(context: Context, parts: readonly string[], at: At): TypedExpression {
  const { bytes, element, length } = readString(parts, context.unit.types);
  const of = context.unit.language === "c++" ? qualify(element, { const: true, volatile: false }) : element;
  return { kind: "string", at, type: arrayOf(of, length), lvalue: true, bytes };
}

function typeThis(context: Context, at: At): TypedExpression {
  const self = context.body?.self;
  if (self === undefined) return unresolved(at, "this", "name", [], "`this` outside a member function");
  return { kind: "this", at, type: referred(self.type), lvalue: false };
}

function typeList(
  context: Context,
  expression: Extract<Expression, { kind: "list" }>,
  expected: Type | undefined,
  at: At,
): TypedExpression {
  const type = expected && referred(expected);
  if (type === undefined || type.kind === "unknown") {
    const operands = expression.entries.map((entry) => typeExpression(context, entry.value));
    return unresolved(at, "", "other", operands, "a braced list without a type");
  }
  const initializer = initializerFrom(context, type, expression);
  if (initializer.kind === "value") return initializer.value;
  return { kind: "construct", at, type, lvalue: false, initializer };
}

/** The last statement gives the value (GNU statement expressions). */
function typeStatementValue(
  context: Context,
  expression: Extract<Expression, { kind: "statement-value" }>,
  at: At,
): TypedExpression {
  const body = typeBlock(inScope(context, blockScope(context.scope)), expression.body);
  return { kind: "statement-value", at, type: typeOfLast(context, body), lvalue: false, body };
}

function typeOfLast(context: Context, body: TypedBlock): Type {
  const last = body.statements[body.statements.length - 1];
  if (last?.kind !== "expression") return context.unit.types.void;
  return decayed(last.expression).type;
}
