import type { Attribute } from "../syntax/nodes.ts";
import { isStandIn, type Token, visibleSpan } from "../tokens.ts";
import type { FunctionType, RecordDeclaration, Type } from "../types/types.ts";
import { bodyWasAsked } from "./kept-results.ts";
import type { At, FunctionDefinition, FunctionSymbol, Storage, TypedInitializer, Variable } from "./nodes.ts";

export interface VariableDraft {
  readonly name: string;
  readonly qualifiedName: string;
  readonly linkageName: string | undefined;
  readonly type: Type;
  readonly storage: Storage;
  readonly constexpr: boolean;
  readonly programMemory: boolean;
  readonly attributes: readonly Attribute[];
  readonly at: At;
  readonly declarationAt: At;
}

/** A variable while its unit is read: later declarations may complete it. */
export class DeclaredVariable implements Variable {
  readonly kind = "variable";
  readonly name: string;
  readonly qualifiedName: string;
  linkageName: string | undefined;
  type: Type;
  readonly storage: Storage;
  constexpr: boolean;
  programMemory: boolean;
  attributes: readonly Attribute[];
  at: At;
  declarationAt: At;
  declarations: At[];
  #initializer: TypedInitializer | (() => TypedInitializer | undefined) | undefined;

  constructor(draft: VariableDraft) {
    this.name = draft.name;
    this.qualifiedName = draft.qualifiedName;
    this.linkageName = draft.linkageName;
    this.type = draft.type;
    this.storage = draft.storage;
    this.constexpr = draft.constexpr;
    this.programMemory = draft.programMemory;
    this.attributes = draft.attributes;
    this.at = draft.at;
    this.declarationAt = draft.declarationAt;
    this.declarations = [draft.declarationAt];
  }

  get initializer(): TypedInitializer | undefined {
    const held = this.#initializer;
    if (typeof held !== "function") return held;
    this.#initializer = undefined;
    const read = held();
    this.#initializer = read;
    return read;
  }

  set initializer(value: TypedInitializer | (() => TypedInitializer | undefined) | undefined) {
    this.#initializer = value;
  }
}

export interface FunctionDraft {
  readonly name: string;
  readonly qualifiedName: string;
  readonly linkageName: string | undefined;
  readonly type: FunctionType;
  readonly parameterNames: readonly (string | undefined)[];
  readonly memberOf: RecordDeclaration | undefined;
  readonly isStatic: boolean;
  readonly isVirtual: boolean;
  readonly vector: string | undefined;
  readonly special: FunctionSymbol["special"];
  readonly isExplicit: boolean;
  readonly attributes: readonly Attribute[];
  readonly at: At;
  readonly declarationAt: At;
  /** Of the unit. */
  readonly phase: { readonly isTyping: boolean };
}

/** A function while its unit is read. Its body is typed when first asked for. */
export class DeclaredFunction implements FunctionSymbol {
  readonly kind = "function";
  readonly name: string;
  readonly qualifiedName: string;
  linkageName: string | undefined;
  type: FunctionType;
  parameterNames: readonly (string | undefined)[];
  readonly memberOf: RecordDeclaration | undefined;
  readonly isStatic: boolean;
  isVirtual: boolean;
  readonly vector: string | undefined;
  readonly special: FunctionSymbol["special"];
  bodyless: FunctionSymbol["bodyless"];
  /** Converts nothing unasked (C++11 12.3.1p2, 12.3.2p2). */
  readonly isExplicit: boolean;
  attributes: readonly Attribute[];
  at: At;
  declarationAt: At;
  declarations: At[];
  defaults: FunctionSymbol["defaults"] = [];
  /** Number of definitions that were read. */
  definitions = 0;
  /** Something else in the unit was typed as it is because of what this body says. */
  decidesTypes = false;
  readonly #phase: FunctionDraft["phase"];
  #body: (() => FunctionDefinition | undefined) | undefined;
  #definition: FunctionDefinition | undefined;
  /** Where `at` was when it was looked up what file that is. */
  #placed: { readonly first: Token; readonly standIn: boolean } | undefined;

  constructor(draft: FunctionDraft) {
    this.name = draft.name;
    this.qualifiedName = draft.qualifiedName;
    this.linkageName = draft.linkageName;
    this.type = draft.type;
    this.parameterNames = draft.parameterNames;
    this.memberOf = draft.memberOf;
    this.isStatic = draft.isStatic;
    this.isVirtual = draft.isVirtual;
    this.vector = draft.vector;
    this.special = draft.special;
    this.isExplicit = draft.isExplicit;
    this.attributes = draft.attributes;
    this.at = draft.at;
    this.declarationAt = draft.declarationAt;
    this.declarations = [draft.declarationAt];
    this.#phase = draft.phase;
  }

  /** What a stand-in header declares and the author defines, such as `setup`, is the author's. */
  get standIn(): boolean {
    const { first } = this.at;
    if (this.#placed?.first !== first) {
      this.#placed = { first, standIn: isStandIn(visibleSpan(first).file) };
    }
    return this.#placed.standIn;
  }

  /** A body is known, typed or not. */
  get isDefined(): boolean {
    return this.#definition !== undefined || this.#body !== undefined;
  }

  /** Gives the way to type the body; undefined where it has to be asked for again later. */
  define(body: () => FunctionDefinition | undefined): void {
    this.definitions += 1;
    this.#body = body;
    this.#definition = undefined;
  }

  /** Puts another body in the place of the only one; `at` is the definition as it is now, its first token kept. */
  redefine(at: At, body: () => FunctionDefinition | undefined): void {
    this.declarations = this.declarations.map((each) => (each.first === at.first ? at : each));
    this.declarationAt = at;
    this.#body = body;
    this.#definition = undefined;
  }

  get definition(): FunctionDefinition | undefined {
    if (this.#phase.isTyping) this.decidesTypes = true;
    const definition = this.typedBody();
    bodyWasAsked(this, definition);
    return definition;
  }

  /** The definition, asked for by nobody: nothing hangs on it. */
  typedBody(): FunctionDefinition | undefined {
    const body = this.#body;
    if (body !== undefined) {
      this.#body = undefined;
      this.#definition = body();
      if (this.#definition === undefined) this.#body = body;
    }
    return this.#definition;
  }
}
