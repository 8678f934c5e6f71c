import type { EnumDeclaration, RecordDeclaration, Type } from "../types/types.ts";

/** Numbers for what is told apart by identity: records and enumerations may share a name. */
export type Numbers = Map<RecordDeclaration | EnumDeclaration, number>;

/** A text that two types share where they are the same, whatever typedefs call them. */
export function typeKey(type: Type, numbers: Numbers): string {
  const qualifiers = `${type.const === true ? "c" : ""}${type.volatile === true ? "v" : ""}`;
  return `${qualifiers}${unqualifiedKey(type, numbers)}`;
}

function unqualifiedKey(type: Type, numbers: Numbers): string {
  const key = (inner: Type): string => typeKey(inner, numbers);
  switch (type.kind) {
    case "void":
      return "void";
    case "integer":
      return `${type.signed ? "s" : "u"}${type.plainChar === true ? "plain " : ""}${type.rank}${type.bits}`;
    case "floating":
      return type.rank;
    case "pointer":
      return `*(${key(type.to)})`;
    case "reference":
      return `${type.rvalue ? "&&" : "&"}(${key(type.to)})`;
    case "array":
      return `[${type.length ?? ""}](${key(type.of)})`;
    case "function":
      return `${key(type.returns)}(${type.parameters.map(key).join(",")}${type.variadic ? ",..." : ""})`;
    case "record":
      return `#${numberOf(type.record, numbers)}`;
    case "enumeration":
      return `#${numberOf(type.enumeration, numbers)}`;
    case "unknown":
      return `?${type.name}`;
  }
}

function numberOf(declaration: RecordDeclaration | EnumDeclaration, numbers: Numbers): number {
  const number = numbers.get(declaration) ?? numbers.size;
  numbers.set(declaration, number);
  return number;
}
