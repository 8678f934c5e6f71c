import type { NotUnderstood } from "../../finding.ts";
import type { Attribute, CastStyle } from "../syntax/nodes.ts";
import type { Token } from "../tokens.ts";
import type {
  DataModel,
  EnumDeclaration,
  Field,
  FunctionType,
  RecordDeclaration,
  Type,
} from "../types/types.ts";

/**
 * The typed tree: names resolved, every expression with its type on the target, implicit conversions written
 * out, operators of built-in types apart from calls. Checks, facts, hovers and the interpreter read this tree.
 */

/** Where a node stands: its first and last token. `visibleRange(first, last)` is what an editor shows. */
export interface At {
  readonly first: Token;
  readonly last: Token;
}

// --- Symbols --------------------------------------------------------------------------------------------

export type Storage = "global" | "file" | "static-local" | "local" | "parameter" | "field";

export interface Variable {
  readonly kind: "variable";
  readonly name: string;
  readonly qualifiedName: string;
  /** What links declarations of it in several units; undefined where it is known in one unit or block only. */
  readonly linkageName: string | undefined;
  type: Type;
  readonly storage: Storage;
  readonly constexpr: boolean;
  /** Lives in program memory (`PROGMEM`). */
  readonly programMemory: boolean;
  readonly attributes: readonly Attribute[];
  /** The declared name's token. */
  readonly at: At;
  /** Typed initialiser; undefined for none. Filled in once read. */
  initializer: TypedInitializer | undefined;
  /** Whole declaration, for notes that belong to it: the defining one where there are several. */
  readonly declarationAt: At;
  /** Every declaration in reading order, the defining one among them. */
  readonly declarations: readonly At[];
}

export interface FunctionSymbol {
  readonly kind: "function";
  readonly name: string;
  readonly qualifiedName: string;
  /** What links declarations of it in several units; undefined for internal linkage. */
  readonly linkageName: string | undefined;
  type: FunctionType;
  /** As in the definition, or else in the last declaration. */
  readonly parameterNames: readonly (string | undefined)[];
  /** The class a member function belongs to. */
  readonly memberOf: RecordDeclaration | undefined;
  readonly isStatic: boolean;
  readonly isVirtual: boolean;
  /** `ISR(X_vect)`: the vector's name; undefined for an ordinary function. */
  readonly vector: string | undefined;
  readonly special: "constructor" | "destructor" | "conversion" | "operator" | undefined;
  /** `= default`, `= delete`, `= 0`: there is no body. */
  readonly bodyless: "default" | "delete" | "pure" | undefined;
  /** By position: what a parameter starts with where a call says nothing; typed when asked for. */
  readonly defaults: readonly (DefaultArgument | undefined)[];
  readonly attributes: readonly Attribute[];
  readonly at: At;
  /** The definition as a whole, or else the first declaration, for notes that belong to it. */
  readonly declarationAt: At;
  /** Every declaration in reading order, the definition among them. */
  readonly declarations: readonly At[];
  /**
   * The definition in this unit; a program finds those of other units. Typed when first asked for, so that
   * unused inline functions of headers cost nothing.
   */
  readonly definition: FunctionDefinition | undefined;
  /** It comes from a built-in stand-in header. */
  readonly standIn: boolean;
}

export type DefaultArgument = () => TypedInitializer | undefined;

export interface FunctionDefinition {
  readonly parameters: readonly Variable[];
  readonly memberInitializers: readonly TypedMemberInitializer[];
  readonly body: TypedBlock;
  /** `this` in member functions. */
  readonly self: Variable | undefined;
}

export interface TypedMemberInitializer {
  readonly at: At;
  readonly target: Field | RecordDeclaration | undefined;
  readonly initializer: TypedInitializer;
}

export interface Enumerator {
  readonly kind: "enumerator";
  readonly name: string;
  /** Undefined where its expression, or that of the one it counts on from, is not understood. */
  readonly value: bigint | undefined;
  /** `int` or wider in C (C11 6.7.2.2p3); values of the enumeration in C++. */
  readonly type: Type;
  readonly enumeration: EnumDeclaration;
  readonly at: At;
}

export interface TypeSymbol {
  readonly kind: "type";
  readonly name: string;
  readonly type: Type;
  readonly at: At;
}

export type NamedSymbol = Variable | FunctionSymbol | Enumerator | TypeSymbol;

// --- Expressions ----------------------------------------------------------------------------------------

export type ArithmeticOperator = "+" | "-" | "*" | "/" | "%" | "<<" | ">>" | "&" | "^" | "|";
export type ComparisonOperator = "<" | ">" | "<=" | ">=" | "==" | "!=";

/**
 * Why a conversion stands here: `explicit` ones are casts in the source, `base` ones go from an object (or a
 * pointer to one) to its base class. Conditions are not converted: they are scalars compared with zero.
 */
export type ConversionReason =
  | "promotion"
  | "arithmetic"
  | "assignment"
  | "argument"
  | "return"
  | "decay"
  | "base"
  | "explicit";

interface Typed {
  readonly at: At;
  /** The type of the value, or of the object where `lvalue`. */
  readonly type: Type;
  readonly lvalue: boolean;
  /** An object that has an address and is about to end (C++11 3.10): `lvalue` too, but taken as a temporary. */
  readonly xvalue?: true;
}

export type TypedExpression = Typed &
  (
    | { readonly kind: "integer"; readonly value: bigint }
    | { readonly kind: "floating"; readonly value: number }
    /** Bytes with the terminating zero. */
    | { readonly kind: "string"; readonly bytes: readonly number[] }
    | { readonly kind: "variable"; readonly variable: Variable }
    | { readonly kind: "function"; readonly function: FunctionSymbol }
    | { readonly kind: "enumerator"; readonly enumerator: Enumerator }
    | { readonly kind: "this" }
    /** `->` is a member of a dereference. */
    | { readonly kind: "member"; readonly object: TypedExpression; readonly field: Field }
    | { readonly kind: "dereference"; readonly operand: TypedExpression }
    | { readonly kind: "address"; readonly operand: TypedExpression }
    | { readonly kind: "negate" | "plus" | "complement" | "not"; readonly operand: TypedExpression }
    | {
        readonly kind: "update";
        readonly operator: "++" | "--";
        readonly position: "prefix" | "postfix";
        readonly operand: TypedExpression;
      }
    /** Both operands have the node's type, shifts excepted; pointer arithmetic has its own kind. */
    | {
        readonly kind: "arithmetic";
        readonly operator: ArithmeticOperator;
        readonly left: TypedExpression;
        readonly right: TypedExpression;
      }
    | {
        readonly kind: "pointer-offset";
        readonly operator: "+" | "-";
        readonly pointer: TypedExpression;
        readonly offset: TypedExpression;
      }
    | { readonly kind: "pointer-difference"; readonly left: TypedExpression; readonly right: TypedExpression }
    | {
        readonly kind: "compare";
        readonly operator: ComparisonOperator;
        readonly left: TypedExpression;
        readonly right: TypedExpression;
      }
    | {
        readonly kind: "logical";
        readonly operator: "&&" | "||";
        readonly left: TypedExpression;
        readonly right: TypedExpression;
      }
    | { readonly kind: "comma"; readonly left: TypedExpression; readonly right: TypedExpression }
    /** `value` is already of the target's type. */
    | { readonly kind: "assign"; readonly target: TypedExpression; readonly value: TypedExpression }
    /** `target op= value`: computed in `computeIn`, then converted back to the target's type. */
    | {
        readonly kind: "compound-assign";
        readonly operator: ArithmeticOperator;
        readonly target: TypedExpression;
        readonly value: TypedExpression;
        readonly computeIn: Type;
      }
    | {
        readonly kind: "conditional";
        readonly condition: TypedExpression;
        readonly then: TypedExpression;
        readonly otherwise: TypedExpression;
      }
    | {
        readonly kind: "call";
        readonly callee: TypedExpression;
        readonly arguments: readonly TypedExpression[];
        /** No function of the name takes these arguments as far as they are understood: one that may be meant. */
        readonly guessed?: true;
      }
    /** Member functions, operators and constructors of classes; `object` is an lvalue. */
    | {
        readonly kind: "method-call";
        readonly object: TypedExpression;
        readonly method: FunctionSymbol;
        /** Called through the dynamic type. */
        readonly virtual: boolean;
        readonly arguments: readonly TypedExpression[];
        readonly guessed?: true;
      }
    | { readonly kind: "index"; readonly array: TypedExpression; readonly index: TypedExpression }
    | {
        readonly kind: "convert";
        readonly operand: TypedExpression;
        readonly reason: ConversionReason;
        readonly style: CastStyle | undefined;
      }
    /** A temporary object: `T(a)`, `T{a}`, a compound literal. */
    | { readonly kind: "construct"; readonly initializer: TypedInitializer }
    | {
        readonly kind: "lambda";
        readonly function: FunctionSymbol;
        /** Those that `[=]` and `[&]` stand for included. */
        readonly captures: readonly TypedCapture[];
        /** Where it keeps the `this` that its body names. */
        readonly self: Field | undefined;
      }
    | {
        readonly kind: "new";
        /** Where the object is made instead of on the heap. */
        readonly placement: TypedExpression | undefined;
        /** Of an array the initialiser of each element, or an aggregate that gives the first ones; the others are zero. */
        readonly initializer: TypedInitializer | undefined;
        readonly length: TypedExpression | undefined;
      }
    | { readonly kind: "delete"; readonly operand: TypedExpression; readonly array: boolean }
    /** Where the arguments behind `...` begin: what `va_start` puts into its list. */
    | { readonly kind: "further-arguments" }
    /** `va_arg(list, T)`; `operand` is the list, which goes on to the next argument. */
    | { readonly kind: "next-argument"; readonly operand: TypedExpression }
    | { readonly kind: "statement-value"; readonly body: TypedBlock }
    /** Known shape, unknown meaning: an undeclared name, a call of something never declared. */
    | {
        readonly kind: "unresolved";
        /** The name as written, `a.b` and `A::b` included; empty where there is none. */
        readonly name: string;
        /** A call's operands are its arguments; a name has none; other forms have what they are made of. */
        readonly form: "name" | "call" | "other";
        readonly operands: readonly TypedExpression[];
        readonly what: string;
      }
  );

export interface TypedCapture {
  /** As the lambda's body names it. */
  readonly variable: Variable;
  readonly source: TypedExpression;
  readonly reference: boolean;
  /** What holds it in the lambda's object: a copy, or for a reference a pointer. */
  readonly field: Field;
}

/** How an object gets its first value. */
export type TypedInitializer =
  | { readonly kind: "value"; readonly at: At; readonly value: TypedExpression }
  /** Elements by position, already matched to fields or indexes; the rest is zero. */
  | {
      readonly kind: "aggregate";
      readonly at: At;
      readonly type: Type;
      readonly entries: readonly AggregateEntry[];
    }
  | {
      readonly kind: "constructor";
      readonly at: At;
      readonly constructor: FunctionSymbol | undefined;
      readonly arguments: readonly TypedExpression[];
      readonly guessed?: true;
    };

export interface AggregateEntry {
  readonly target: Field | { readonly index: number; readonly upTo: number };
  readonly initializer: TypedInitializer;
}

// --- Statements -----------------------------------------------------------------------------------------

export interface TypedBlock {
  readonly kind: "block";
  readonly at: At;
  readonly statements: readonly TypedStatement[];
}

export type TypedStatement =
  | TypedBlock
  | ({ readonly at: At } & (
      | { readonly kind: "expression"; readonly expression: TypedExpression }
      | { readonly kind: "variables"; readonly variables: readonly Variable[] }
      | {
          readonly kind: "if";
          /** C++ `if (init; ...)` and declarations in the condition. */
          readonly init: TypedStatement | undefined;
          readonly condition: TypedExpression;
          readonly then: TypedStatement;
          readonly otherwise: TypedStatement | undefined;
        }
      | {
          readonly kind: "while";
          /** C++ `while (T x = ...)`: run before every test of the condition. */
          readonly declared: TypedStatement | undefined;
          readonly condition: TypedExpression;
          readonly body: TypedStatement;
        }
      | { readonly kind: "do"; readonly body: TypedStatement; readonly condition: TypedExpression }
      | {
          readonly kind: "for";
          readonly init: TypedStatement | undefined;
          readonly condition: TypedExpression | undefined;
          readonly step: TypedExpression | undefined;
          readonly body: TypedStatement;
        }
      | {
          readonly kind: "range-for";
          /** Its initialiser is the element. */
          readonly variable: Variable;
          readonly range: TypedExpression;
          /** Undefined for a range that is not understood. */
          readonly iteration: RangeIteration | undefined;
          readonly body: TypedStatement;
        }
      | { readonly kind: "switch"; readonly condition: TypedExpression; readonly body: TypedStatement }
      | {
          readonly kind: "case";
          readonly value: TypedExpression;
          readonly upTo: TypedExpression | undefined;
          readonly body: TypedStatement | undefined;
        }
      | { readonly kind: "default"; readonly body: TypedStatement | undefined }
      | { readonly kind: "label"; readonly name: string; readonly body: TypedStatement | undefined }
      | { readonly kind: "goto"; readonly name: string }
      | { readonly kind: "break" }
      | { readonly kind: "continue" }
      | {
          readonly kind: "return";
          readonly value: TypedExpression | undefined;
          /** The value stands in parentheses, so that it names no variable that may be the result itself. */
          readonly parenthesized: boolean;
        }
      | {
          readonly kind: "assembly";
          readonly text: string;
          /** It has operands or clobbers, understood or not. */
          readonly operands: boolean;
          readonly outputs: readonly TypedAssemblyOperand[];
          readonly inputs: readonly TypedAssemblyOperand[];
        }
      | { readonly kind: "empty" }
      | { readonly kind: "not-understood"; readonly what: string }
    ));

/** `[name] "constraint" (value)` of inline assembly. */
export interface TypedAssemblyOperand {
  readonly name: string | undefined;
  readonly constraint: string;
  readonly value: TypedExpression;
}

/** What a range `for` stands for: `for (variables; condition; step) { element = ...; body }` (C++11 6.5.4). */
export interface RangeIteration {
  /** The range, as a reference, its begin and its end: none of them has a name in the source. */
  readonly variables: readonly Variable[];
  readonly condition: TypedExpression;
  readonly step: TypedExpression;
}

// --- Units and programs -----------------------------------------------------------------------------------

/** A place where a symbol or field is named: a declaration of it or a use. */
export interface Reference {
  readonly token: Token;
  readonly target: NamedSymbol | Field;
}

/** What is known of a class beyond its layout. */
export interface ClassMembers {
  readonly record: RecordDeclaration;
  /** All member functions, constructors and the destructor included, in order of declaration. */
  readonly functions: readonly FunctionSymbol[];
  /** By the field's name: what it starts with where a constructor says nothing (`int x = 5;`). */
  readonly fieldInitializers: ReadonlyMap<string, () => TypedInitializer | undefined>;
}

/** One translation unit: a C or C++ file, or all `.ino` files of a sketch. */
export interface TypedUnit {
  /** The same object as long as nothing but bodies of functions changes; names what may be kept that long. */
  readonly lasting: object;
  /** The main files, in reading order. */
  readonly mains: readonly string[];
  readonly language: "c" | "c++";
  readonly model: DataModel;
  /** Everything declared at file or namespace level or in classes, in order of declaration. */
  readonly symbols: readonly NamedSymbol[];
  readonly functions: readonly FunctionSymbol[];
  readonly variables: readonly Variable[];
  /** Variables declared inside functions, static ones included, parameters not. */
  readonly locals: readonly Variable[];
  readonly classes: ReadonlyMap<RecordDeclaration, ClassMembers>;
  /** Where fields are declared. */
  readonly fieldPlaces: ReadonlyMap<Field, At>;
  /** In reading order by declaration; functions' bodies in workspace files included. */
  readonly references: readonly Reference[];
  readonly problems: readonly NotUnderstood[];
}
