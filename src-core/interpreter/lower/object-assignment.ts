import type { At, FunctionSymbol, TypedExpression } from "../../reader/typed/nodes.ts";
import type { RecordDeclaration, Type } from "../../reader/types/types.ts";
import { copiedBits } from "./bit-fields.ts";
import { bytesOf, eachElement, hasSpecial, type Source, takesOwn, takesRvalue } from "./copies.ts";
import { moved, ofClass } from "./initializers.ts";
import { functionCode } from "./missing.ts";
import { addressOf } from "./places.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";
import { stored } from "./shape.ts";
import { lowerValue, shapeAt } from "./values.ts";

/** `target = value` of objects whose class says nothing of it: member by member (C++11 12.8p28). */
export function assignObject(
  scope: FunctionScope,
  { target, value, at }: Extract<TypedExpression, { kind: "assign" }>,
): string {
  const { type } = target;
  const place = scope.place(at);
  if (type.kind !== "record" || !assignsItself(scope, type))
    return stored(shapeAt(scope, target), addressOf(scope, target), lowerValue(scope, value), place);
  const [to, from] = [scope.temporary(), scope.temporary()];
  const source = value.lvalue && value.xvalue !== true ? "stays" : "ends";
  const given = lowerValue(scope, ofClass(value, type.record));
  const steps = memberwise(scope, to, from, type.record, source, at);
  return `(${[`${from}=${given}`, `${to}=${addressOf(scope, target)}`, ...steps, to].join(",")})`;
}

/** Bases, then members. Addresses are names. */
function memberwise(
  scope: FunctionScope,
  to: string,
  from: string,
  record: RecordDeclaration,
  source: Source,
  at: At,
): string[] {
  if (record.keyword === "union")
    throw new CannotLower("an assignment of a union whose members assign themselves", at);
  const inner = source === "ends" && hasSpecial(scope, record) ? "stays" : source;
  const parts: readonly (readonly [number, Type])[] = record.bases.map(
    (base) => [base.offset, { kind: "record", record: base.record }] as const,
  );
  const bases = parts.flatMap(([offset, type]) =>
    assigned(scope, moved(to, offset), moved(from, offset), type, inner, at),
  );
  const fields = record.fields.flatMap(({ type, bitOffset, bitWidth }) => {
    const [target, given] = [moved(to, bitOffset >> 3), moved(from, bitOffset >> 3)];
    return bitWidth === undefined
      ? assigned(scope, target, given, type, inner, at)
      : [copiedBits(target, given, bitOffset % 8, bitWidth, scope.place(at))];
  });
  return [...bases, ...fields];
}

function assigned(
  scope: FunctionScope,
  to: string,
  from: string,
  type: Type,
  source: Source,
  at: At,
): string[] {
  if (!assignsItself(scope, type))
    return [`copy(${to},${from},${bytesOf(scope, type, at)},${scope.place(at)})`];
  if (type.kind === "array")
    return eachElement(scope, to, from, type, at, (a, b) => assigned(scope, a, b, type.of, source, at));
  if (type.kind !== "record") throw new CannotLower("an assignment of this object", at);
  const own = ownAssignment(scope, type, source);
  if (own !== undefined) return [`${functionCode(scope, own, at)}(${to},${from})`];
  return memberwise(scope, to, from, type.record, source, at);
}

/** The assignment for this object, whose parameter is as volatile as the object is. */
function ownAssignment(
  scope: FunctionScope,
  type: Extract<Type, { kind: "record" }>,
  source: Source,
): FunctionSymbol | undefined {
  const all = (scope.linkage.classOf(type.record)?.functions ?? []).filter((symbol) => {
    const [only] = symbol.type.parameters;
    if (!isAssignment(symbol) || only?.kind !== "reference") return false;
    return (only.to.volatile === true) === (type.volatile === true);
  });
  const moving = all.find(takesRvalue);
  return source === "ends" && moving !== undefined ? moving : all.find((symbol) => !takesRvalue(symbol));
}

/** An assignment that its author wrote. */
function isAssignment(symbol: FunctionSymbol): boolean {
  return symbol.name === "operator=" && takesOwn(symbol) && symbol.bodyless !== "default";
}

/** Whether copying its bytes is no assignment of the object: a class with virtual functions keeps its own number. */
function assignsItself(scope: FunctionScope, type: Type): boolean {
  if (type.kind === "array") return assignsItself(scope, type.of);
  if (type.kind !== "record") return false;
  const { record } = type;
  return (
    record.polymorphic ||
    scope.linkage.classOf(record)?.functions.some(isAssignment) === true ||
    record.fields.some((field) => assignsItself(scope, field.type)) ||
    record.bases.some((base) => assignsItself(scope, { kind: "record", record: base.record }))
  );
}
