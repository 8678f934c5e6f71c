import { evaluate } from "../constants/evaluate.ts";
import type { EnumeratorSyntax, EnumSpecifier } from "../syntax/nodes.ts";
import { fits } from "../types/conversions.ts";
import type { EnumDeclaration, IntegerType, Type } from "../types/types.ts";
import { atOf, type Context, inScope, note, refer } from "./context.ts";
import { typeExpression } from "./expressions.ts";
import { resolve } from "./names.ts";
import type { Enumerator, TypeSymbol } from "./nodes.ts";
import { isPacked } from "./records.ts";
import { lookupTag, makeScope, type Scope } from "./scope.ts";
import { typeOfTypeName } from "./specifiers.ts";

/** The type that an enum specifier means; its enumerators are declared on the way (C11 6.7.2.2). */
export function enumOf(context: Context, syntax: EnumSpecifier, hint: string): Type {
  const { scope, unit } = context;
  const part = syntax.name?.parts[syntax.name.parts.length - 1];
  if (syntax.enumerators === undefined) {
    const known = syntax.name === undefined ? undefined : knownEnum(context, syntax);
    if (known !== undefined) {
      if (part !== undefined) refer(context, part, known);
      return known.type;
    }
  }
  const earlier = part === undefined ? undefined : scope.tags.get(part.text);
  const ownName = part?.text ?? hint;
  const enumeration: EnumDeclaration =
    earlier?.type.kind === "enumeration"
      ? earlier.type.enumeration
      : {
          name: ownName === "" ? "" : `${scope.prefix}${ownName}`,
          scoped: syntax.scoped,
          underlying: unit.types.int,
          promotesTo: unit.types.int,
          enumerators: [],
        };
  const type: Type =
    earlier?.type.kind === "enumeration" ? earlier.type : { kind: "enumeration", enumeration };
  if (part !== undefined && type !== earlier?.type) {
    declareTag(context, { kind: "type", name: part.text, type, at: atOf(context, part) });
  } else if (part !== undefined && earlier !== undefined) {
    refer(context, part, earlier);
  }
  const fixed = fixedUnderlying(context, syntax);
  if (fixed !== undefined) enumeration.underlying = fixed;
  if (syntax.enumerators !== undefined) {
    declareEnumerators(context, syntax.enumerators, enumeration, type, {
      fixed,
      packed: isPacked(syntax.attributes),
    });
  }
  return type;
}

function knownEnum(context: Context, syntax: EnumSpecifier): TypeSymbol | undefined {
  if (syntax.name === undefined) return undefined;
  const only = syntax.name.parts.length === 1 ? syntax.name.parts[0] : undefined;
  if (only !== undefined) return lookupTag(context.scope, only.text);
  const entry = resolve(context, syntax.name);
  return entry?.kind === "type" ? entry : undefined;
}

/** Declares the name after `struct`, `union`, `class` or `enum`; in C++ it is a type name as well. */
export function declareTag(context: Context, symbol: TypeSymbol, scope: Scope = context.scope): void {
  scope.tags.set(symbol.name, symbol);
  if (context.unit.language === "c++" && !scope.names.has(symbol.name)) scope.names.set(symbol.name, symbol);
  if (scope.kind !== "block" && scope.kind !== "template") context.unit.symbols.add(symbol);
  context.passage.references.push({ token: symbol.at.first, target: symbol });
}

function fixedUnderlying(context: Context, syntax: EnumSpecifier): IntegerType | undefined {
  if (syntax.underlying !== undefined) {
    const type = typeOfTypeName(context, syntax.underlying);
    if (type.kind === "integer") return type;
  }
  return syntax.scoped ? context.unit.types.int : undefined;
}

/** GCC's choice: `unsigned int` unless a value is negative, wider where it must be, narrower where it is packed. */
function chosenUnderlying(context: Context, values: readonly bigint[], packed: boolean): IntegerType {
  const { types } = context.unit;
  const isSigned = values.some((value) => value < 0n);
  const narrow = isSigned ? [types.signedChar, types.short] : [types.unsignedChar, types.unsignedShort];
  const wide = isSigned
    ? [types.int, types.long, types.longLong]
    : [types.unsignedInt, types.unsignedLong, types.unsignedLongLong];
  const candidates = packed ? [...narrow, ...wide] : wide;
  return candidates.find((type) => values.every((value) => fits(value, type))) ?? types.unsignedLongLong;
}

function declareEnumerators(
  context: Context,
  syntax: readonly EnumeratorSyntax[],
  enumeration: EnumDeclaration,
  type: Type,
  { fixed, packed }: { readonly fixed: IntegerType | undefined; readonly packed: boolean },
): void {
  const { unit } = context;
  // The names of `enum class` are known within it alone (C++11 7.2p10).
  const scope = enumeration.scoped
    ? makeScope("enumeration", context.scope, context.scope.prefix)
    : context.scope;
  const inside = enumeration.scoped ? inScope(context, scope) : context;
  const declared = new Map<string, Growing>();
  unit.enumerators.set(enumeration, declared);
  let next: bigint | undefined = 0n;
  for (const entry of syntax) {
    const value: bigint | undefined = enumeratorValue(inside, entry, next);
    next = value === undefined ? undefined : value + 1n;
    const enumerator: Growing = {
      kind: "enumerator",
      name: entry.name,
      value,
      type: unit.language === "c++" ? type : unit.types.int,
      enumeration,
      at: atOf(context, { first: entry.first, end: entry.first + 1 }),
    };
    declared.set(entry.name, enumerator);
    refer(context, entry, enumerator);
    scope.names.set(entry.name, enumerator);
    if (context.scope.kind !== "block") unit.symbols.add(enumerator);
  }
  enumeration.enumerators = [...declared.values()].map(({ name, value }) => ({ name, value }));
  const values = [...declared.values()].flatMap(({ value }) => (value === undefined ? [] : [value]));
  if (fixed === undefined) enumeration.underlying = chosenUnderlying(context, values, packed);
  enumeration.promotesTo = promotionOf(context, enumeration.underlying, values, fixed);
  if (unit.language === "c++") return;
  for (const enumerator of declared.values()) {
    const isWide = enumerator.value !== undefined && !fits(enumerator.value, unit.types.int);
    if (isWide) enumerator.type = enumeration.underlying;
  }
}

/** Enumeration constants are `int` in C (C11 6.7.2.2p3); GCC makes those that do not fit as wide as the enum. */
type Growing = { -readonly [Key in keyof Enumerator]: Enumerator[Key] };

/** C: as the underlying type. C++: the first type from `int` up that holds all values of its bits (11 4.5p3). */
function promotionOf(
  context: Context,
  underlying: IntegerType,
  values: readonly bigint[],
  fixed: IntegerType | undefined,
): IntegerType {
  const { types } = context.unit;
  if (context.unit.language === "c" || fixed !== undefined) return underlying;
  let bits = 1;
  while (
    values.some((value) => value !== BigInt.asIntN(bits, value) && value !== BigInt.asUintN(bits, value))
  ) {
    bits += 1;
  }
  const isSigned = values.some((value) => value < 0n);
  const largest = isSigned ? (1n << BigInt(bits - 1)) - 1n : (1n << BigInt(bits)) - 1n;
  const ladder = [types.int, types.unsignedInt, types.long, types.unsignedLong, types.longLong];
  return ladder.find((type) => fits(largest, type) && (!isSigned || type.signed)) ?? types.unsignedLongLong;
}

function enumeratorValue(
  context: Context,
  entry: EnumeratorSyntax,
  next: bigint | undefined,
): bigint | undefined {
  if (entry.value === undefined) return next;
  const value = evaluate(typeExpression(context, entry.value), context.unit.model);
  if (value.kind === "integer") return value.value;
  note(context, atOf(context, entry.value), `the value of \`${entry.name}\` is not known`);
  return undefined;
}
