import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { Field, RecordDeclaration, Type } from "../../reader/types/types.ts";
import type { ReadUnit } from "./declared.ts";

/** A name that encodes and decodes may use, with its type where it has one. */
export interface KnownName {
  readonly name: string;
  readonly kind: "parameter" | "member" | "global" | "function";
  readonly type: Type;
}

/** What a note on `symbol` can name: its parameters, members of its class, globals and functions of the unit. */
export function knownNames(symbol: FunctionSymbol, unit: ReadUnit): readonly KnownName[] {
  const names: KnownName[] = [];
  for (const [index, name] of symbol.parameterNames.entries()) {
    const type = symbol.type.parameters[index];
    if (name !== undefined && type !== undefined) names.push({ name, kind: "parameter", type });
  }
  if (symbol.memberOf !== undefined) {
    for (const field of allFields(symbol.memberOf)) {
      names.push({ name: field.name, kind: "member", type: field.type });
    }
    const type: Type = { kind: "record", record: symbol.memberOf };
    names.push({ name: "this", kind: "member", type: { kind: "pointer", to: type } });
  }
  for (const variable of unit.typed.variables) {
    names.push({ name: variable.name, kind: "global", type: variable.type });
    if (variable.qualifiedName !== variable.name) {
      names.push({ name: variable.qualifiedName, kind: "global", type: variable.type });
    }
  }
  for (const each of unit.typed.functions) names.push({ name: each.name, kind: "function", type: each.type });
  return names;
}

/** Whether a class or one of its bases has a member function of this name. */
export function hasMethod(record: RecordDeclaration, name: string, unit: ReadUnit): boolean {
  const own = unit.typed.classes.get(record)?.functions.some((each) => each.name === name) === true;
  return own || record.bases.some((base) => hasMethod(base.record, name, unit));
}

/** The record behind pointers, references and arrays; undefined where there is none or it is not known. */
export function recordBehind(type: Type): RecordDeclaration | undefined {
  switch (type.kind) {
    case "record":
      return type.record.complete ? type.record : undefined;
    case "pointer":
    case "reference":
      return recordBehind(type.to);
    case "array":
      return recordBehind(type.of);
    default:
      return undefined;
  }
}

/** Fields of a record, its bases' and its unnamed members' fields included. */
export function allFields(record: RecordDeclaration): readonly Field[] {
  const inherited = record.bases.flatMap((base) => allFields(base.record));
  const own = record.fields.flatMap((field) => {
    const inner = field.name === "" ? recordBehind(field.type) : undefined;
    return inner === undefined ? [field] : allFields(inner);
  });
  return [...inherited, ...own];
}
