/** What a name means where it is used without `struct` and the like before it. */
export type NameKind = "type" | "class-template" | "function-template" | "value";

/**
 * What the names of a unit mean, carried from chunk to chunk. A member of class `A` is kept as `A::x`,
 * whatever namespace or class `A` itself stands in.
 */
export interface UnitNames {
  readonly language: "c" | "c++";
  readonly kinds: Map<string, NameKind>;
  /** Base classes by class name. */
  readonly bases: Map<string, readonly string[]>;
}

export function createUnitNames(language: "c" | "c++"): UnitNames {
  return { language, kinds: new Map(), bases: new Map() };
}

/**
 * What a chunk asked of the unit's names and what it adds to them: as long as the answers stay, so does its tree. Lists,
 * as every reading goes through those of all chunks.
 */
export interface NameJournal {
  readonly asked: Pairs<NameKind | undefined>;
  readonly askedBases: Pairs<string>;
  readonly declared: Pairs<NameKind>;
  readonly declaredBases: Pairs<readonly string[]>;
}

type Pairs<Value> = readonly (readonly [name: string, value: Value])[];

/** Whether the unit would answer today as it did when the journal was written. */
export function stillHolds(journal: NameJournal, names: UnitNames): boolean {
  for (const [name, kind] of journal.asked) if (names.kinds.get(name) !== kind) return false;
  for (const [name, bases] of journal.askedBases) if (joined(names.bases.get(name)) !== bases) return false;
  return true;
}

/** Adds to the unit's names what the chunk declares. */
export function apply(journal: NameJournal, names: UnitNames): void {
  for (const [name, kind] of journal.declared) names.kinds.set(name, kind);
  for (const [name, bases] of journal.declaredBases) names.bases.set(name, bases);
}

const joined = (bases: readonly string[] | undefined): string => bases?.join(" ") ?? "";

interface LocalScope {
  /** Simple name of the class whose members are in scope here. */
  readonly className: string | undefined;
  readonly kinds: Map<string, NameKind>;
  /** Holds a template's parameters: the template itself is declared outside. */
  readonly ofTemplate: boolean;
}

/** The names as one chunk sees and changes them, its blocks included. */
export class ChunkNames {
  readonly language: "c" | "c++";
  private readonly unit: UnitNames;
  private readonly scopes: LocalScope[] = [];
  private readonly asked = new Map<string, NameKind | undefined>();
  private readonly askedBases = new Map<string, string>();
  private readonly declared = new Map<string, NameKind>();
  private readonly declaredBases = new Map<string, readonly string[]>();

  constructor(unit: UnitNames) {
    this.unit = unit;
    this.language = unit.language;
  }

  /** Opens a block, or with a name the body of that class (or of one of its member functions). */
  enter(className?: string): void {
    this.scopes.push({ className, kinds: new Map(), ofTemplate: false });
  }

  enterTemplate(): void {
    this.scopes.push({ className: undefined, kinds: new Map(), ofTemplate: true });
  }

  leave(): void {
    this.scopes.pop();
  }

  /** The class whose body or member function is read. */
  get className(): string | undefined {
    for (let index = this.scopes.length - 1; index >= 0; index -= 1) {
      const name = this.scopes[index]?.className;
      if (name !== undefined) return name;
    }
    return undefined;
  }

  declare(name: string, kind: NameKind): void {
    const scope = this.scopes.findLast((each) => !each.ofTemplate);
    if (scope === undefined) this.declared.set(name, kind);
    else if (scope.className === undefined) scope.kinds.set(name, kind);
    else this.declared.set(`${scope.className}::${name}`, kind);
  }

  declareTemplateParameter(name: string, kind: NameKind): void {
    this.scopes[this.scopes.length - 1]?.kinds.set(name, kind);
  }

  /** Declares at file level, from wherever: what must be a type though no declaration of it was seen. */
  declareOutside(name: string, kind: NameKind): void {
    this.declared.set(name, kind);
  }

  declareMember(className: string, name: string, kind: NameKind): void {
    this.declared.set(`${className}::${name}`, kind);
  }

  declareBases(className: string, bases: readonly string[]): void {
    this.declaredBases.set(className, bases);
  }

  lookup(name: string): NameKind | undefined {
    for (let index = this.scopes.length - 1; index >= 0; index -= 1) {
      const scope = this.scopes[index];
      if (scope === undefined) continue;
      const kind = scope.className === undefined ? scope.kinds.get(name) : this.member(scope.className, name);
      if (kind !== undefined) return kind;
    }
    return this.ask(name);
  }

  /** `qualifier::name` for a class or a namespace, whose names count as those of the file. */
  qualified(qualifier: string, name: string): NameKind | undefined {
    const kind = this.member(qualifier, name);
    if (kind !== undefined || this.ask(qualifier) !== undefined) return kind;
    return this.ask(name);
  }

  /** `className::name`, bases included. */
  member(className: string, name: string, depth = 0): NameKind | undefined {
    if (name === className) return this.lookupOutside(className);
    const own = this.ask(`${className}::${name}`);
    if (own !== undefined || depth > 8) return own;
    for (const base of this.basesOf(className)) {
      const kind = this.member(base, name, depth + 1);
      if (kind !== undefined) return kind;
    }
    return undefined;
  }

  journal(): NameJournal {
    return {
      asked: [...this.asked],
      askedBases: [...this.askedBases],
      declared: [...this.declared],
      declaredBases: [...this.declaredBases],
    };
  }

  private lookupOutside(name: string): NameKind | undefined {
    return this.ask(name) ?? "type";
  }

  private ask(key: string): NameKind | undefined {
    const own = this.declared.get(key);
    if (own !== undefined) return own;
    const kind = this.unit.kinds.get(key);
    this.asked.set(key, kind);
    return kind;
  }

  private basesOf(className: string): readonly string[] {
    const own = this.declaredBases.get(className);
    if (own !== undefined) return own;
    const bases = this.unit.bases.get(className);
    this.askedBases.set(className, joined(bases));
    return bases ?? [];
  }
}
