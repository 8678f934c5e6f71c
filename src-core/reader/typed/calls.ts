import type { Expression, Name, NamePart } from "../syntax/nodes.ts";
import { calledType, pointerTo, referred } from "../types/derive.ts";
import { withArguments } from "./argument-lookup.ts";
import { operatorCall } from "./class-operators.ts";
import { compilerFunction } from "./compiler-functions.ts";
import { atOf, type Context, refer } from "./context.ts";
import { promotedArgument } from "./convert.ts";
import { typeExpression } from "./expressions.ts";
import { initializerOf } from "./initializers.ts";
import { categoryOf, convertNode, decayed, unresolved, writtenName } from "./make.ts";
import { memberEntry, memberObject, memberOf, unknownMember } from "./members.ts";
import { methodCall } from "./method-calls.ts";
import { functionNode } from "./name-expressions.ts";
import { resolve } from "./names.ts";
import type { At, FunctionSymbol, TypedExpression } from "./nodes.ts";
import { type Choice, chooseOverload, completeArguments, convertArguments } from "./overloads.ts";
import { expanded } from "./packs.ts";
import { returnType } from "./return-type.ts";
import { nameText, type OverloadSet } from "./scope.ts";
import { templateCandidates } from "./templates.ts";
import { dereference } from "./unary-operators.ts";

type CallSyntax = Extract<Expression, { kind: "call" }>;

export function typeCall(context: Context, syntax: CallSyntax, at: At): TypedExpression {
  const { callee } = syntax;
  if (callee.kind === "name") return callByName(context, syntax, callee.name, at);
  if (callee.kind === "member") return callMember(context, syntax, callee, at);
  return callValue(context, typeExpression(context, callee), typeArguments(context, syntax), at);
}

function typeArguments(context: Context, syntax: CallSyntax, symbol?: FunctionSymbol): TypedExpression[] {
  return expanded(context, syntax.arguments).map((argument, index) =>
    typeExpression(context, argument, symbol?.type.parameters[index]),
  );
}

function callByName(context: Context, syntax: CallSyntax, name: Name, at: At): TypedExpression {
  const entry = resolve(context, name);
  const last = name.parts[name.parts.length - 1];
  if (entry === undefined || last === undefined) {
    const text = nameText(name);
    if (text === "__builtin_next_arg") {
      // The last named parameter is named for compilers of old; the call says where it ends.
      typeArguments(context, syntax);
      return { kind: "further-arguments", at, type: pointerTo(context.unit.types.void), lvalue: false };
    }
    const own = compilerFunction(context.unit.model, text);
    const typed = typeArguments(context, syntax, own);
    if (own !== undefined && typed.length === own.type.parameters.length)
      return callFunction(context, syntax, own, typed, at);
    // What the compiler is told to expect changes no value (gcc manual, "Other Builtins").
    const [expectation] = text === "__builtin_expect" ? typed : [];
    if (expectation !== undefined)
      return convertNode(decayed(expectation), context.unit.types.long, "explicit");
    const set = isPlain(name) ? withArguments(context, text, undefined, typed) : undefined;
    if (set !== undefined && last !== undefined) return callChosen(context, syntax, set, last, typed, at);
    const given = typed.map((argument) => promotedArgument(context, argument));
    return unresolved(at, text, "call", given, `\`${text}\` is not declared`);
  }
  if (entry.kind === "overloads") return callOverload(context, syntax, entry, last, at);
  if (entry.kind === "type") {
    const given = typeArguments(context, syntax);
    refer(context, last, entry);
    const initializer = initializerOf(context, entry.type, given, at);
    if (initializer?.kind === "value")
      return { ...convertNode(initializer.value, entry.type, "explicit", "functional"), at };
    return {
      kind: "construct",
      at,
      type: entry.type,
      lvalue: false,
      initializer: initializer ?? { kind: "constructor", at, constructor: undefined, arguments: given },
    };
  }
  return callValue(context, typeExpression(context, syntax.callee), typeArguments(context, syntax), at);
}

const isPlain = (name: Name): boolean => name.parts.length === 1 && !name.global;

/** The function of a set that a call with these arguments means, template instances among them. */
function chosenOf(
  context: Context,
  set: OverloadSet,
  part: NamePart,
  given: readonly TypedExpression[],
  object: TypedExpression | undefined,
): Choice | undefined {
  const instances = templateCandidates(context, set, part, given);
  const plain = part.templateArguments === undefined ? set.functions : [];
  return chooseOverload(context, [...new Set([...plain, ...instances])], given, object);
}

/** Arguments as a set's only function expects them. */
function argumentsFor(context: Context, syntax: CallSyntax, set: OverloadSet): TypedExpression[] {
  const isOnly = set.functions.length === 1 && set.templates.length === 0;
  return typeArguments(context, syntax, isOnly ? set.functions[0] : undefined);
}

function callOverload(
  context: Context,
  syntax: CallSyntax,
  set: OverloadSet,
  part: NamePart,
  at: At,
): TypedExpression {
  const given = argumentsFor(context, syntax, set);
  const isFree = set.functions.every(({ memberOf }) => memberOf === undefined);
  const isPlainCall = syntax.callee.kind === "name" && isPlain(syntax.callee.name);
  const all = isFree && isPlainCall ? withArguments(context, part.text, set, given) : set;
  return callChosen(context, syntax, all ?? set, part, given, at);
}

function callChosen(
  context: Context,
  syntax: CallSyntax,
  set: OverloadSet,
  part: NamePart,
  given: readonly TypedExpression[],
  at: At,
): TypedExpression {
  const chosen = chosenOf(context, set, part, given, ownObject(context, at));
  if (chosen === undefined) {
    return unresolved(at, part.text, "call", given, `no \`${part.text}\` takes these arguments`);
  }
  const { symbol, certainty } = chosen;
  refer(context, part, symbol);
  if (symbol.memberOf !== undefined && !symbol.isStatic) {
    const object = ownObject(context, at);
    if (object === undefined) {
      return unresolved(at, part.text, "call", given, `\`${part.text}\` is called without an object`);
    }
    const call = { ...methodCall(context, object, symbol, given, at), ...certainty };
    const qualified = syntax.callee.kind === "name" && syntax.callee.name.parts.length > 1;
    return call.kind === "method-call" && qualified ? { ...call, virtual: false } : call;
  }
  return { ...callFunction(context, syntax, symbol, given, at), ...certainty };
}

function callFunction(
  context: Context,
  syntax: CallSyntax,
  symbol: FunctionSymbol,
  given: readonly TypedExpression[],
  at: At,
): Extract<TypedExpression, { kind: "call" }> {
  const returns = returnType(symbol);
  return {
    kind: "call",
    at,
    type: referred(returns),
    ...categoryOf(returns),
    callee: functionNode(symbol, atOf(context, syntax.callee)),
    arguments: completeArguments(context, symbol, given),
  };
}

/** `*this`, where there is one. */
function ownObject(context: Context, at: At): TypedExpression | undefined {
  const self = context.body?.self;
  if (self === undefined) return undefined;
  return dereference({ kind: "this", at, type: self.type, lvalue: false }, at);
}

function callMember(
  context: Context,
  syntax: CallSyntax,
  callee: Extract<Expression, { kind: "member" }>,
  at: At,
): TypedExpression {
  const object = memberObject(context, callee);
  const last = callee.member.parts[callee.member.parts.length - 1];
  const entry = memberEntry(context, object, callee);
  if (entry?.kind === "overloads" && last !== undefined) {
    const given = argumentsFor(context, syntax, entry);
    const chosen = chosenOf(context, entry, last, given, object);
    if (chosen !== undefined) {
      const { symbol, certainty } = chosen;
      refer(context, last, symbol);
      const call = { ...methodCall(context, object, symbol, given, at), ...certainty };
      const isQualified = callee.member.parts.length > 1;
      return call.kind === "method-call" && isQualified ? { ...call, virtual: false } : call;
    }
    const name = writtenName(unknownMember(object, last.text, at));
    return unresolved(at, name, "call", given, `no \`${last.text}\` takes these arguments`);
  }
  const value = memberOf(context, object, callee, atOf(context, callee));
  return callValue(context, value, typeArguments(context, syntax), at);
}

/** A call through a value: a function pointer, an object with `operator()`, something not known. */
function callValue(
  context: Context,
  callee: TypedExpression,
  given: readonly TypedExpression[],
  at: At,
): TypedExpression {
  const called = operatorCall(context, "()", [callee, ...given], at);
  if (called !== undefined) return called;
  const type = calledType(callee.type);
  if (type === undefined) {
    const name = writtenName(callee);
    const operands = given.map((argument) => promotedArgument(context, argument));
    return unresolved(
      at,
      name,
      "call",
      operands,
      callee.kind === "unresolved" ? callee.what : "this is no function",
    );
  }
  return {
    kind: "call",
    at,
    type: referred(type.returns),
    ...categoryOf(type.returns),
    callee: callee.type.kind === "pointer" ? callee : decayedFunction(callee),
    arguments: convertArguments(context, type, given),
  };
}

function decayedFunction(callee: TypedExpression): TypedExpression {
  return callee.kind === "function" ? callee : decayed(callee);
}
