import type { DataModel, FloatingType, IntegerRank, IntegerType, Type } from "./types.ts";

/** The types a data model starts from; the same objects every time, so that comparing them is cheap. */
export interface BasicTypes {
  readonly void: Type;
  readonly bool: IntegerType;
  readonly char: IntegerType;
  readonly signedChar: IntegerType;
  readonly unsignedChar: IntegerType;
  readonly short: IntegerType;
  readonly unsignedShort: IntegerType;
  readonly int: IntegerType;
  readonly unsignedInt: IntegerType;
  readonly long: IntegerType;
  readonly unsignedLong: IntegerType;
  readonly longLong: IntegerType;
  readonly unsignedLongLong: IntegerType;
  readonly float: FloatingType;
  readonly double: FloatingType;
  readonly longDouble: FloatingType;
  /** The type of `sizeof`. */
  readonly size: IntegerType;
  /** The type of a difference of pointers. */
  readonly difference: IntegerType;
}

function integer(rank: IntegerRank, bits: number, signed: boolean, name: string): IntegerType {
  return { kind: "integer", rank, bits, signed, name };
}

function makeBasicTypes(model: DataModel): BasicTypes {
  const int = integer("int", model.int, true, "int");
  const unsignedInt = integer("int", model.int, false, "unsigned int");
  return {
    void: { kind: "void" },
    bool: integer("bool", 8, false, "bool"),
    char: {
      kind: "integer",
      rank: "char",
      plainChar: true,
      bits: 8,
      signed: model.charSigned,
      name: "char",
    },
    signedChar: integer("char", 8, true, "signed char"),
    unsignedChar: integer("char", 8, false, "unsigned char"),
    short: integer("short", model.short, true, "short"),
    unsignedShort: integer("short", model.short, false, "unsigned short"),
    int,
    unsignedInt,
    long: integer("long", model.long, true, "long"),
    unsignedLong: integer("long", model.long, false, "unsigned long"),
    longLong: integer("long long", model.longLong, true, "long long"),
    unsignedLongLong: integer("long long", model.longLong, false, "unsigned long long"),
    float: { kind: "floating", rank: "float", bits: model.float, name: "float" },
    double: { kind: "floating", rank: "double", bits: model.double, name: "double" },
    longDouble: { kind: "floating", rank: "long double", bits: model.double, name: "long double" },
    size: unsignedInt,
    difference: int,
  };
}

const made = new WeakMap<DataModel, BasicTypes>();

export function basicTypes(model: DataModel): BasicTypes {
  let types = made.get(model);
  if (types === undefined) {
    types = makeBasicTypes(model);
    made.set(model, types);
  }
  return types;
}

/** The unsigned type of the same rank (C11 6.2.5p6). `bool` stays itself. */
export function unsignedOf(type: IntegerType, model: DataModel): IntegerType {
  const types = basicTypes(model);
  switch (type.rank) {
    case "bool":
      return types.bool;
    case "char":
      return types.unsignedChar;
    case "short":
      return types.unsignedShort;
    case "int":
      return types.unsignedInt;
    case "long":
      return types.unsignedLong;
    case "long long":
      return types.unsignedLongLong;
  }
}

/** The signed type of the same rank. `bool` stays itself. */
export function signedOf(type: IntegerType, model: DataModel): IntegerType {
  const types = basicTypes(model);
  switch (type.rank) {
    case "bool":
      return types.bool;
    case "char":
      return types.signedChar;
    case "short":
      return types.short;
    case "int":
      return types.int;
    case "long":
      return types.long;
    case "long long":
      return types.longLong;
  }
}
