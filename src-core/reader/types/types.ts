/**
 * The types of C and C++ as a target lays them out. Types are immutable; records and enumerations are
 * compared by identity, all else by structure (`sameType`).
 */

/** What the language standard leaves to the implementation. All sizes in bits. */
export interface DataModel {
  readonly name: "avr" | "ilp32";
  readonly charSigned: boolean;
  readonly short: 16;
  readonly int: 16 | 32;
  readonly long: 32;
  readonly longLong: 64;
  readonly pointer: 16 | 32;
  readonly float: 32;
  /** `double` is a 32-bit float on AVR. */
  readonly double: 32 | 64;
  /** 1 where the target packs everything (AVR); else the largest natural alignment in bytes. */
  readonly maxAlignment: 1 | 4 | 8;
}

interface Qualified {
  readonly const?: true;
  readonly volatile?: true;
}

export type IntegerRank = "bool" | "char" | "short" | "int" | "long" | "long long";
export type FloatingRank = "float" | "double" | "long double";

export type Type = Qualified &
  (
    | { readonly kind: "void" }
    /** `name` is the spelling for people: `uint8_t` where written so, else `unsigned char`. */
    | {
        readonly kind: "integer";
        readonly rank: IntegerRank;
        /** Plain `char` is its own type: `plainChar` with the signedness of the data model. */
        readonly plainChar?: true;
        readonly bits: number;
        readonly signed: boolean;
        readonly name: string;
      }
    | {
        readonly kind: "floating";
        readonly rank: FloatingRank;
        readonly bits: 32 | 64;
        readonly name: string;
      }
    | { readonly kind: "pointer"; readonly to: Type }
    | { readonly kind: "reference"; readonly to: Type; readonly rvalue: boolean }
    /** `length` is undefined while unknown (`[]`) and for variable length. */
    | { readonly kind: "array"; readonly of: Type; readonly length: number | undefined }
    /** `const`: a member function of objects that are const too (C++11 8.3.5p6). */
    | {
        readonly kind: "function";
        readonly returns: Type;
        readonly parameters: readonly Type[];
        readonly variadic: boolean;
      }
    | { readonly kind: "record"; readonly record: RecordDeclaration }
    | { readonly kind: "enumeration"; readonly enumeration: EnumDeclaration }
    /** Known to be a type, but not which: its header is missing, or it is beyond what is understood. */
    | { readonly kind: "unknown"; readonly name: string }
  );

export type IntegerType = Extract<Type, { kind: "integer" }>;
export type FloatingType = Extract<Type, { kind: "floating" }>;
export type FunctionType = Extract<Type, { kind: "function" }>;

export interface Field {
  readonly name: string;
  readonly type: Type;
  /** Width of a bit-field in bits; undefined for an ordinary member. */
  readonly bitWidth: number | undefined;
  /** Offset from the start of the record, in bits. */
  readonly bitOffset: number;
  readonly mutable?: true;
}

/** A base class inside a derived one. */
export interface BaseSubobject {
  readonly record: RecordDeclaration;
  /** Bytes from the start of the derived object. */
  readonly offset: number;
}

/** A struct, union or class. Filled in when its body is read, so mutable by the reader alone. */
export interface RecordDeclaration {
  readonly keyword: "struct" | "union" | "class";
  /** Qualified name; empty for an anonymous one. */
  readonly name: string;
  complete: boolean;
  fields: readonly Field[];
  bases: readonly BaseSubobject[];
  /** It has virtual functions, so its objects begin with a pointer to their table (or the base's do). */
  polymorphic: boolean;
  /** Bytes, once complete. */
  size: number;
  /** Bytes. */
  alignment: number;
}

export interface EnumDeclaration {
  readonly name: string;
  /** `enum class`: no implicit conversion to an integer. */
  readonly scoped: boolean;
  /** The integer type values are kept in. */
  underlying: IntegerType;
  /** What its values become as operands; nothing where `scoped`. In C that follows from `underlying`. */
  promotesTo: IntegerType;
  /** `value` is undefined where its expression is not understood. */
  enumerators: readonly { readonly name: string; readonly value: bigint | undefined }[];
}
