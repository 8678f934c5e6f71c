import type { At, FunctionSymbol } from "../../reader/typed/nodes.ts";
import { sizeOf } from "../../reader/types/layout.ts";
import type { RecordDeclaration, Type } from "../../reader/types/types.ts";
import { moved } from "./initializers.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";

/**
 * JavaScript expressions that assign one object of a class to another, member by member where a member's class has
 * an assignment of its own (C++11 12.8p28). Addresses are names. Empty where it is a plain copy of bytes.
 */
export function memberwise(
  scope: FunctionScope,
  to: string,
  from: string,
  record: RecordDeclaration,
  at: At,
): string[] {
  if (!record.fields.some(({ type }) => assignsItself(scope, type))) return [];
  if (record.keyword === "union" || record.bases.length > 0)
    throw new CannotLower("an assignment of an object whose members assign themselves", at);
  const place = scope.place(at);
  return record.fields.flatMap(({ type, bitOffset, bitWidth }) => {
    const offset = bitOffset >> 3;
    const [target, source] = [moved(to, offset), moved(from, offset)];
    if (bitWidth !== undefined) {
      const bits = `${bitOffset % 8},${bitWidth}`;
      return [`sb(${target},${bits},lb(${source},${bits},false,${place}),${place})`];
    }
    return assigned(scope, target, source, type, at);
  });
}

function assigned(scope: FunctionScope, to: string, from: string, type: Type, at: At): string[] {
  const own = type.kind === "record" ? ownAssignment(scope, type) : undefined;
  if (own !== undefined) return [`F[${scope.linkage.functionNumber(own)}](${to},${from})`];
  if (!assignsItself(scope, type))
    return [`copy(${to},${from},${bytesOf(scope, type, at)},${scope.place(at)})`];
  if (type.kind !== "record")
    throw new CannotLower("an assignment of an array whose elements assign themselves", at);
  return memberwise(scope, to, from, type.record, at);
}

function bytesOf(scope: FunctionScope, type: Type, at: At): number {
  const size = sizeOf(type, scope.linkage.model);
  if (size === undefined) throw new CannotLower("an assignment of an object of unknown size", at);
  return size;
}

/** The assignment for this object, whose parameter is as volatile as the object is. */
function ownAssignment(
  scope: FunctionScope,
  type: Extract<Type, { kind: "record" }>,
): FunctionSymbol | undefined {
  return scope.linkage.classOf(type.record)?.functions.find(({ name, type: signature }) => {
    const [only] = signature.parameters;
    if (name !== "operator=" || only?.kind !== "reference" || only.rvalue) return false;
    const { to } = only;
    return (
      to.kind === "record" && to.record === type.record && (to.volatile === true) === (type.volatile === true)
    );
  });
}

function assignsItself(scope: FunctionScope, type: Type): boolean {
  if (type.kind === "array") return assignsItself(scope, type.of);
  if (type.kind !== "record") return false;
  const members = scope.linkage.classOf(type.record)?.functions ?? [];
  return (
    members.some(({ name }) => name === "operator=") ||
    type.record.fields.some((field) => assignsItself(scope, field.type))
  );
}
