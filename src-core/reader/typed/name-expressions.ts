import type { Name } from "../syntax/nodes.ts";
import { referred } from "../types/derive.ts";
import type { Type } from "../types/types.ts";
import { type Context, refer } from "./context.ts";
import { toBase } from "./convert.ts";
import { findField } from "./fields.ts";
import { unresolved } from "./make.ts";
import { fieldAccess } from "./members.ts";
import { resolve, scopeOfQualifiers } from "./names.ts";
import type { At, FunctionSymbol, TypedExpression, Variable } from "./nodes.ts";
import { type FieldEntry, nameText } from "./scope.ts";
import { functionInstance } from "./templates.ts";
import { dereference } from "./unary-operators.ts";

/** A name as an expression; `expected` picks among overloads where a function pointer is wanted. */
export function typeName(context: Context, name: Name, at: At, expected: Type | undefined): TypedExpression {
  const entry = resolve(context, name);
  const last = name.parts[name.parts.length - 1];
  const text = nameText(name);
  if (entry === undefined || last === undefined) {
    return unresolved(at, text, "name", [], `\`${text}\` is not declared`);
  }
  switch (entry.kind) {
    case "variable":
      refer(context, last, entry);
      return variableNode(entry, at);
    case "enumerator":
      refer(context, last, entry);
      return { kind: "enumerator", at, type: entry.type, lvalue: false, enumerator: entry };
    case "overloads": {
      const chosen = explicitInstance(context, name) ?? pick(entry.functions, expected);
      if (chosen === undefined) return unresolved(at, text, "name", [], `which \`${text}\` is not known`);
      refer(context, last, chosen);
      return functionNode(chosen, at);
    }
    case "field":
      return ownField(context, entry, name, at);
    case "type":
    case "template":
    case "namespace":
    case "pack":
      return unresolved(at, text, "name", [], `\`${text}\` is a ${entry.kind}, no value`);
  }
}

export function variableNode(variable: Variable, at: At): TypedExpression {
  return { kind: "variable", at, type: referred(variable.type), lvalue: true, variable };
}

export function functionNode(symbol: FunctionSymbol, at: At): TypedExpression {
  return { kind: "function", at, type: symbol.type, lvalue: true, function: symbol };
}

function pick(functions: readonly FunctionSymbol[], expected: Type | undefined): FunctionSymbol | undefined {
  const wanted = expected && referred(expected);
  const type = wanted?.kind === "pointer" ? wanted.to : wanted;
  if (functions.length > 1 && type?.kind === "function") {
    const fitting = functions.find(
      (candidate) => candidate.type.parameters.length === type.parameters.length,
    );
    if (fitting !== undefined) return fitting;
  }
  return functions[0];
}

/** `f<uint8_t>` as a value. */
function explicitInstance(context: Context, name: Name): FunctionSymbol | undefined {
  const last = name.parts[name.parts.length - 1];
  if (last?.templateArguments === undefined) return undefined;
  const entry = resolve(context, name);
  const template = entry?.kind === "overloads" ? entry.templates[0] : undefined;
  return template && functionInstance(context, template, last, []);
}

/** `Base::value` is a field of the base, whatever the derived class calls so. */
export function asNamedBase(context: Context, object: TypedExpression, name: Name): TypedExpression {
  const scope = name.parts.length > 1 ? scopeOfQualifiers(context, name) : undefined;
  if (scope === undefined) return object;
  for (const [record, members] of context.unit.classes) {
    if (members.scope === scope) return toBase(object, { kind: "record", record }) ?? object;
  }
  return object;
}

/** A field named inside a member function: of `*this`. */
function ownField(context: Context, entry: FieldEntry, name: Name, at: At): TypedExpression {
  const last = name.parts[name.parts.length - 1];
  const self = context.body?.self;
  if (self?.type.kind !== "pointer" || last === undefined) {
    return unresolved(at, nameText(name), "name", [], `\`${entry.name}\` is a field, and there is no object`);
  }
  const pointer: TypedExpression = { kind: "this", at, type: self.type, lvalue: false };
  const object = asNamedBase(context, dereference(pointer, at), name);
  const found = object.type.kind === "record" ? findField(object.type.record, entry.name) : undefined;
  if (found === undefined) {
    return unresolved(at, nameText(name), "name", [], `\`${entry.name}\` is no field of this class`);
  }
  return fieldAccess(context, object, found, last, at);
}
