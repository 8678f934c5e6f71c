import type { Place } from "../syntax/nodes.ts";
import type { Token } from "../tokens.ts";
import { type BasicTypes, basicTypes } from "../types/basic-types.ts";
import type { DataModel, EnumDeclaration, Field, RecordDeclaration, Type } from "../types/types.ts";
import type {
  At,
  Enumerator,
  FunctionSymbol,
  NamedSymbol,
  Reference,
  TypedInitializer,
  Variable,
} from "./nodes.ts";
import { makeScope, type Scope, type TemplateArgumentValue, type TemplateEntry } from "./scope.ts";

import type { Numbers } from "./type-keys.ts";

/** A class while the unit is read. */
export interface ClassState {
  readonly record: RecordDeclaration;
  /** As written after `class`: what its constructors are called. */
  readonly ownName: string;
  readonly scope: Scope;
  readonly functions: FunctionSymbol[];
  /** `int x = 5;` in the class: typed when first asked for. */
  readonly fieldInitializers: Map<string, () => TypedInitializer | undefined>;
}

export interface ClassInstance {
  readonly template: TemplateEntry;
  readonly arguments: readonly TemplateArgumentValue[];
}

/** What reading a unit gathers. */
export interface UnitState {
  readonly language: "c" | "c++";
  readonly model: DataModel;
  readonly types: BasicTypes;
  readonly global: Scope;
  readonly symbols: Set<NamedSymbol>;
  readonly classes: Map<RecordDeclaration, ClassState>;
  /** The functions of lambdas by their classes. */
  readonly closures: Map<RecordDeclaration, FunctionSymbol>;
  /** Sets classes and enumerations apart that are arguments of templates. */
  readonly typeNumbers: Numbers;
  /** Which instance of which class template a record is. */
  readonly instances: Map<RecordDeclaration, ClassInstance>;
  readonly enumerators: Map<EnumDeclaration, Map<string, Enumerator>>;
  readonly fieldPlaces: Map<Field, At>;
  /** How often something that was declared before was declared again. */
  declaredAgain: number;
  /** True until the whole unit is typed. */
  readonly phase: { isTyping: boolean };
  /** `c` inside `extern "C"`. */
  linkage: "c" | "c++";
  /** Levels of template instances and expressions being typed, so that neither can run away. */
  depth: number;
}

/** The function whose body is being read. */
export interface BodyContext {
  /** Undefined while it has to be deduced from the first `return`. */
  returns: Type | undefined;
  readonly self: Variable | undefined;
}

/** The tokens of a chunk, and what typing them gathers, in the order in which it is met. */
export interface Passage {
  tokens: readonly Token[];
  references: Reference[];
  locals: Variable[];
  problems: ProblemAt[];
}

/** Something that is not understood; becomes a span when all of the unit is typed. */
export interface ProblemAt {
  readonly at: At;
  readonly message: string;
}

export function passageOf(tokens: readonly Token[]): Passage {
  return { tokens, references: [], locals: [], problems: [] };
}

/** Where typing stands: everything a piece of syntax needs to become typed. */
export interface Context {
  readonly unit: UnitState;
  /** The chunk, to whose tokens places refer. */
  readonly passage: Passage;
  readonly scope: Scope;
  readonly body: BodyContext | undefined;
}

export interface UnitSetting {
  readonly language: "c" | "c++";
  readonly model: DataModel;
}

export function makeUnitState(setting: UnitSetting): UnitState {
  return {
    language: setting.language,
    model: setting.model,
    types: basicTypes(setting.model),
    global: makeScope("global", undefined, ""),
    symbols: new Set(),
    classes: new Map(),
    closures: new Map(),
    typeNumbers: new Map(),
    instances: new Map(),
    enumerators: new Map(),
    fieldPlaces: new Map(),
    declaredAgain: 0,
    phase: { isTyping: true },
    linkage: setting.language,
    depth: 0,
  };
}

export function inScope(context: Context, scope: Scope): Context {
  return { unit: context.unit, passage: context.passage, scope, body: context.body };
}

/** Stands where there is no token at all, as in an empty file. */
const nowhere: Token = {
  kind: "other",
  text: "",
  file: "",
  start: 0,
  end: 0,
  space: false,
  macro: undefined,
};

export function atOf(context: Context, place: Place): At {
  return atIn(context.passage.tokens, place);
}

/** The first and last of some tokens that a place refers to. */
export function atIn(tokens: readonly Token[], place: Place): At {
  const first = tokens[place.first] ?? tokens[tokens.length - 1] ?? nowhere;
  const last = tokens[place.end - 1] ?? first;
  return { first, last: place.end > place.first ? last : first };
}

/** Remembers that this token names that symbol or field. */
export function refer(context: Context, place: Place, target: NamedSymbol | Field): void {
  const { tokens, references } = context.passage;
  const token = tokens[place.first];
  if (token !== undefined) references.push({ token, target });
}

export function note(context: Context, at: At, message: string): void {
  context.passage.problems.push({ at, message });
}

/**
 * The deepest nesting of expressions, statements and template instances that is read; whoever goes one level
 * down counts `UnitState.depth` up and, coming back, down.
 */
export const deepest = 400;

/**
 * Makes what may need more of its kind without end, an instance of a template or the body of a function that
 * has to be known; undefined where that goes too deep.
 */
export function deeper<Result>(context: Context, make: () => Result): Result | undefined {
  const { unit } = context;
  const levels = 8;
  if (unit.depth + levels > deepest) return undefined;
  unit.depth += levels;
  const made = make();
  unit.depth -= levels;
  return made;
}
