import { allFields, recordBehind } from "../../notes/attachment/known-names.ts";
import type { Program } from "../../reader/program/program.ts";
import type { FunctionSymbol, TypedUnit } from "../../reader/typed/nodes.ts";
import type { RecordDeclaration, Type } from "../../reader/types/types.ts";
import { NotTried } from "./not-tried.ts";

/**
 * The functions that `into` names: one, or those of a class that have the name. Nothing where it names a parameter, a
 * member or an object.
 */
export function targetFunctions(
  path: readonly string[],
  symbol: FunctionSymbol,
  unit: TypedUnit,
  program: Program,
): ReadonlySet<FunctionSymbol> {
  const named = functionsNamed(path, symbol, unit).map((each) => program.definitionOf(each) ?? each);
  const takesNothing = named.find(({ type }) => type.parameters.length === 0);
  if (takesNothing !== undefined && named.length === 1)
    throw new NotTried(`\`${path.join(".")}\` takes no byte that could be looked at`, takesNothing.at);
  return new Set(named);
}

function functionsNamed(
  path: readonly string[],
  symbol: FunctionSymbol,
  unit: TypedUnit,
): readonly FunctionSymbol[] {
  const [root = "", ...members] = path;
  const object = typeNamed(root, symbol, unit);
  if (object !== undefined) {
    const method = members.pop();
    const record = method === undefined ? undefined : recordAt(object, members);
    // What a field is called, a method is not.
    return method === undefined || record === undefined ? [] : methodsNamed(method, record, unit);
  }
  if (members.length > 0) return [];
  const own = symbol.memberOf === undefined ? [] : methodsNamed(root, symbol.memberOf, unit);
  if (own.length > 0) return own;
  // A class that has a method of the name is not meant.
  const free = unit.functions.filter(({ memberOf }) => memberOf === undefined);
  const named =
    unit.functions.find(({ qualifiedName }) => qualifiedName === root) ??
    free.find(({ name }) => name === root);
  return named === undefined ? [] : [named];
}

/** Of a parameter, a member or a global; undefined where the name means none of these. */
function typeNamed(root: string, { parameterNames, type, memberOf }: FunctionSymbol, unit: TypedUnit) {
  const parameter = type.parameters[parameterNames.indexOf(root)];
  if (parameter !== undefined) return parameter;
  if (memberOf !== undefined) {
    if (root === "this") return { kind: "record", record: memberOf } satisfies Type;
    const field = allFields(memberOf).find(({ name }) => name === root);
    if (field !== undefined) return field.type;
  }
  return unit.variables.find(({ name, qualifiedName }) => name === root || qualifiedName === root)?.type;
}

function recordAt(outer: Type, members: readonly string[]): RecordDeclaration | undefined {
  let record = recordBehind(outer);
  for (const member of members) {
    const field = record && allFields(record).find(({ name }) => name === member);
    record = field && recordBehind(field.type);
  }
  return record;
}

/** Member functions by name: those of base classes too, and those of derived ones, which a virtual call may reach. */
function methodsNamed(method: string, record: RecordDeclaration, unit: TypedUnit): readonly FunctionSymbol[] {
  return [...unit.classes].flatMap(([each, { functions }]) =>
    isOrDerives(record, each) || isOrDerives(each, record)
      ? functions.filter(({ name }) => name === method)
      : [],
  );
}

function isOrDerives(record: RecordDeclaration, base: RecordDeclaration): boolean {
  return record === base || record.bases.some((each) => isOrDerives(each.record, base));
}
