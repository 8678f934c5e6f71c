/**
 * The shape of C and C++ as written: what the grammar says, with the questions only names can answer (a cast
 * or a subtraction, a declaration or a product) already settled. A node's place is a range of token indexes
 * in its chunk, so a tree depends on its chunk's text alone and can be kept while the file around it changes.
 */

/** Token indexes in the chunk: `first` to `end`, exclusive. */
export interface Place {
  readonly first: number;
  readonly end: number;
}

/** `a`, `::a`, `N::C::a`; template arguments stand with their part. */
export interface Name extends Place {
  readonly global: boolean;
  readonly parts: readonly NamePart[];
}

export interface NamePart extends Place {
  /** Identifier, `operator+`, `operator bool`, or `~C`. */
  readonly text: string;
  readonly templateArguments: readonly TemplateArgument[] | undefined;
}

export type TemplateArgument =
  | { readonly kind: "type"; readonly type: TypeName }
  | { readonly kind: "value"; readonly value: Expression };

// --- Types as written ----------------------------------------------------------------------------------

export type StorageWord =
  | "typedef"
  | "static"
  | "extern"
  | "inline"
  | "constexpr"
  | "register"
  | "virtual"
  | "explicit"
  | "friend"
  | "mutable"
  | "thread_local";

/** Attributes that change meaning for firmware: `packed`, `noinline`, `naked`, `section`, `progmem`... */
export interface Attribute extends Place {
  readonly name: string;
  readonly arguments: readonly string[];
}

/** Declaration specifiers: storage words, qualifiers and the type they name. */
export interface Specifiers extends Place {
  readonly storage: readonly StorageWord[];
  readonly const: boolean;
  readonly volatile: boolean;
  readonly type: TypeSpecifier;
  readonly attributes: readonly Attribute[];
}

export type TypeSpecifier = Place &
  /** `unsigned long int` and the like, words as written. */
  (
    | { readonly kind: "words"; readonly words: readonly string[] }
    | { readonly kind: "named"; readonly name: Name }
    | { readonly kind: "record"; readonly record: RecordSpecifier }
    | { readonly kind: "enum"; readonly enumeration: EnumSpecifier }
    | { readonly kind: "auto" }
    /** `decltype(e)`, `typeof(e)`. */
    | { readonly kind: "typeof"; readonly expression: Expression }
    /** Constructors, destructors, conversion operators, old-style declarations: no type is written. */
    | { readonly kind: "none" }
  );

export interface RecordSpecifier extends Place {
  readonly keyword: "struct" | "union" | "class";
  readonly name: Name | undefined;
  readonly bases: readonly BaseSpecifier[];
  /** Undefined where only named (`struct point p;`). */
  readonly members: readonly Declaration[] | undefined;
  readonly attributes: readonly Attribute[];
}

export interface BaseSpecifier extends Place {
  readonly access: Access | undefined;
  readonly virtual: boolean;
  readonly name: Name;
}

export type Access = "public" | "protected" | "private";

export interface EnumSpecifier extends Place {
  readonly scoped: boolean;
  readonly name: Name | undefined;
  readonly underlying: TypeName | undefined;
  /** Undefined where only named. */
  readonly enumerators: readonly EnumeratorSyntax[] | undefined;
  readonly attributes: readonly Attribute[];
}

export interface EnumeratorSyntax extends Place {
  readonly name: string;
  readonly value: Expression | undefined;
}

/** What stands around a declared name, outermost last: `*a[3]` is array of pointer, so [array, pointer]. */
export type DeclaratorPart = Place &
  (
    | { readonly kind: "pointer"; readonly const: boolean; readonly volatile: boolean }
    | { readonly kind: "reference"; readonly rvalue: boolean }
    | { readonly kind: "array"; readonly length: Expression | undefined }
    | {
        readonly kind: "function";
        readonly parameters: readonly Parameter[];
        readonly variadic: boolean;
        readonly const: boolean;
        readonly trailingReturn: TypeName | undefined;
      }
  );

/** A declared name with the parts to apply to the specifiers' type, from the name outwards. */
export interface Declarator extends Place {
  readonly name: Name | undefined;
  readonly parts: readonly DeclaratorPart[];
  readonly attributes: readonly Attribute[];
}

export interface TypeName extends Place {
  readonly specifiers: Specifiers;
  readonly declarator: Declarator;
}

export interface Parameter extends Place {
  readonly specifiers: Specifiers;
  readonly declarator: Declarator;
  /** `Ts... rest`: as many as the call has. */
  readonly pack: boolean;
  readonly defaultValue: Expression | undefined;
}

// --- Declarations ---------------------------------------------------------------------------------------

export type Initializer = Place &
  /** `= e` or `= { ... }` */
  (
    | { readonly kind: "value"; readonly value: Expression }
    /** `x(a, b)` or `x{a, b}` */
    | { readonly kind: "construct"; readonly braces: boolean; readonly arguments: readonly Expression[] }
  );

export interface InitDeclarator extends Place {
  readonly declarator: Declarator;
  readonly bitWidth: Expression | undefined;
  readonly initializer: Initializer | undefined;
}

export interface MemberInitializer extends Place {
  readonly name: Name;
  readonly arguments: readonly Expression[];
}

export type TemplateParameter = Place &
  (
    | {
        readonly kind: "type";
        readonly name: string | undefined;
        readonly pack: boolean;
        readonly defaultType: TypeName | undefined;
      }
    | { readonly kind: "value"; readonly parameter: Parameter }
  );

export type Declaration = Place &
  /** Variables, prototypes, typedefs, fields; `declarators` empty for `struct s {...};` */
  (
    | {
        readonly kind: "simple";
        readonly specifiers: Specifiers;
        readonly declarators: readonly InitDeclarator[];
      }
    | {
        readonly kind: "function";
        readonly specifiers: Specifiers;
        readonly declarator: Declarator;
        readonly memberInitializers: readonly MemberInitializer[];
        readonly body: Block;
      }
    /** `= default`, `= delete`, `= 0` */
    | {
        readonly kind: "special-function";
        readonly specifiers: Specifiers;
        readonly declarator: Declarator;
        readonly special: "default" | "delete" | "pure";
      }
    | {
        readonly kind: "namespace";
        readonly inline: boolean;
        readonly name: Name | undefined;
        readonly members: readonly Declaration[];
      }
    | { readonly kind: "linkage"; readonly language: string; readonly members: readonly Declaration[] }
    | {
        readonly kind: "template";
        readonly parameters: readonly TemplateParameter[];
        readonly declaration: Declaration;
      }
    | { readonly kind: "alias"; readonly name: string; readonly type: TypeName }
    /** `namespace name = target;` */
    | { readonly kind: "namespace-alias"; readonly name: string; readonly target: Name }
    | { readonly kind: "using"; readonly name: Name; readonly namespace: boolean }
    | { readonly kind: "access"; readonly access: Access }
    | {
        readonly kind: "static-assert";
        readonly condition: Expression;
      }
    | { readonly kind: "assembly"; readonly text: string }
    | { readonly kind: "empty" }
    /** The grammar found no sense in these tokens; nothing in them is known. */
    | { readonly kind: "not-understood"; readonly what: string }
  );

// --- Statements -----------------------------------------------------------------------------------------

export interface Block extends Place {
  readonly kind: "block";
  readonly statements: readonly Statement[];
}

export type Statement =
  | Block
  | (Place &
      (
        | { readonly kind: "expression"; readonly expression: Expression }
        | { readonly kind: "declaration"; readonly declaration: Declaration }
        | {
            readonly kind: "if";
            readonly init: Statement | undefined;
            readonly condition: Condition;
            readonly then: Statement;
            readonly otherwise: Statement | undefined;
          }
        | { readonly kind: "while"; readonly condition: Condition; readonly body: Statement }
        | { readonly kind: "do"; readonly body: Statement; readonly condition: Expression }
        | {
            readonly kind: "for";
            readonly init: Statement | undefined;
            readonly condition: Condition | undefined;
            readonly step: Expression | undefined;
            readonly body: Statement;
          }
        | {
            readonly kind: "range-for";
            readonly specifiers: Specifiers;
            readonly declarator: Declarator;
            readonly range: Expression;
            readonly body: Statement;
          }
        | { readonly kind: "switch"; readonly condition: Condition; readonly body: Statement }
        /** `case a:`, GNU `case a ... b:`; the statement is the one labelled. */
        | {
            readonly kind: "case";
            readonly value: Expression;
            readonly upTo: Expression | undefined;
            readonly body: Statement | undefined;
          }
        | { readonly kind: "default"; readonly body: Statement | undefined }
        | { readonly kind: "label"; readonly name: string; readonly body: Statement | undefined }
        | { readonly kind: "goto"; readonly name: string }
        | { readonly kind: "break" }
        | { readonly kind: "continue" }
        | {
            readonly kind: "return";
            readonly value: Expression | undefined;
            /** `return (x);` */
            readonly parenthesized: boolean;
          }
        | {
            readonly kind: "assembly";
            readonly text: string;
            /** It has operands or clobbers beyond the text. */
            readonly operands: boolean;
            readonly outputs: readonly AssemblyOperand[];
            readonly inputs: readonly AssemblyOperand[];
          }
        | { readonly kind: "empty" }
        | { readonly kind: "not-understood"; readonly what: string }
      ));

/** `[name] "constraint" (value)` of inline assembly. */
export interface AssemblyOperand extends Place {
  readonly name: string | undefined;
  readonly constraint: string;
  readonly value: Expression;
}

/** A condition is an expression, or in C++ a declaration (`if (int n = read())`). */
export type Condition = Expression | Extract<Declaration, { kind: "simple" }>;

// --- Expressions ----------------------------------------------------------------------------------------

export type UnaryOperator = "+" | "-" | "!" | "~" | "*" | "&";
export type BinaryOperator =
  | "+"
  | "-"
  | "*"
  | "/"
  | "%"
  | "<<"
  | ">>"
  | "<"
  | ">"
  | "<="
  | ">="
  | "=="
  | "!="
  | "&"
  | "^"
  | "|"
  | "&&"
  | "||"
  | ",";
export type AssignmentOperator = "=" | "+=" | "-=" | "*=" | "/=" | "%=" | "<<=" | ">>=" | "&=" | "^=" | "|=";
export type CastStyle =
  | "c"
  | "functional"
  | "static_cast"
  | "reinterpret_cast"
  | "const_cast"
  | "dynamic_cast";

export type Expression = Place &
  /** Integer, floating or character literal as written, prefix and suffix included. */
  (
    | { readonly kind: "number"; readonly text: string }
    | { readonly kind: "character"; readonly text: string }
    /** Adjacent literals, each as written. */
    | { readonly kind: "string"; readonly parts: readonly string[] }
    | { readonly kind: "boolean"; readonly value: boolean }
    | { readonly kind: "nullptr" }
    | { readonly kind: "this" }
    | { readonly kind: "name"; readonly name: Name }
    | { readonly kind: "unary"; readonly operator: UnaryOperator; readonly operand: Expression }
    | {
        readonly kind: "update";
        readonly operator: "++" | "--";
        readonly position: "prefix" | "postfix";
        readonly operand: Expression;
      }
    | {
        readonly kind: "binary";
        readonly operator: BinaryOperator;
        readonly left: Expression;
        readonly right: Expression;
      }
    | {
        readonly kind: "assign";
        readonly operator: AssignmentOperator;
        readonly target: Expression;
        readonly value: Expression;
      }
    | {
        readonly kind: "conditional";
        readonly condition: Expression;
        /** Undefined for the GNU form `a ?: b`. */
        readonly then: Expression | undefined;
        readonly otherwise: Expression;
      }
    | { readonly kind: "call"; readonly callee: Expression; readonly arguments: readonly Expression[] }
    | { readonly kind: "index"; readonly array: Expression; readonly index: Expression }
    | {
        readonly kind: "member";
        readonly object: Expression;
        readonly arrow: boolean;
        readonly member: Name;
      }
    | {
        readonly kind: "cast";
        readonly style: CastStyle;
        readonly type: TypeName;
        /** One for a cast; any number for a functional cast or `T{...}`. */
        readonly operands: readonly Expression[];
      }
    | { readonly kind: "sizeof-type"; readonly type: TypeName }
    | { readonly kind: "sizeof-value"; readonly operand: Expression }
    /** `sizeof...(Ts)` */
    | { readonly kind: "pack-length"; readonly name: string }
    /** `pattern...` */
    | { readonly kind: "expansion"; readonly pattern: Expression }
    /** One of the expressions that an expansion stands for; the grammar never gives it. */
    | { readonly kind: "pack-element"; readonly pattern: Expression; readonly index: number }
    | { readonly kind: "alignof"; readonly type: TypeName }
    | { readonly kind: "offsetof"; readonly type: TypeName; readonly member: string }
    /** `__builtin_va_arg(list, T)` */
    | { readonly kind: "next-argument"; readonly list: Expression; readonly type: TypeName }
    | { readonly kind: "list"; readonly entries: readonly ListEntry[] }
    | { readonly kind: "compound"; readonly type: TypeName; readonly list: Expression }
    | {
        readonly kind: "lambda";
        readonly captures: readonly Capture[];
        readonly captureDefault: "copy" | "reference" | undefined;
        readonly declarator: Declarator;
        readonly body: Block;
      }
    | {
        readonly kind: "new";
        /** `new (p) T`: where the object is to be made. */
        readonly placement: Expression | undefined;
        readonly type: TypeName;
        readonly length: Expression | undefined;
        /** What is around the arguments, of which there may be none: `new T`, `new T()`, `new T{}`. */
        readonly form: "none" | "parentheses" | "braces";
        readonly arguments: readonly Expression[];
      }
    | { readonly kind: "delete"; readonly array: boolean; readonly operand: Expression }
    /** GNU `({ ...; value; })`, as util/atomic.h and program-memory reads use. */
    | { readonly kind: "statement-value"; readonly body: Block }
    | { readonly kind: "not-understood"; readonly what: string }
  );

export interface ListEntry extends Place {
  /** `.x[2]` is [field x, index 2]. */
  readonly designators: readonly Designator[];
  readonly value: Expression;
}

export type Designator = Place &
  (
    | { readonly kind: "field"; readonly name: string }
    | { readonly kind: "index"; readonly index: Expression; readonly upTo: Expression | undefined }
  );

export interface Capture extends Place {
  readonly name: string;
  readonly reference: boolean;
  readonly value: Expression | undefined;
}

/** One parsed chunk: its declarations, and what was not understood in it. */
export interface ChunkSyntax {
  readonly declarations: readonly Declaration[];
  readonly notUnderstood: readonly (Place & { readonly what: string })[];
}
