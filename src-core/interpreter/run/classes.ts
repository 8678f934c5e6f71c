import type { ClassMembers, FunctionSymbol } from "../../reader/typed/nodes.ts";
import { sameSignature } from "../../reader/types/compare.ts";
import { typeText } from "../../reader/types/text.ts";
import type { RecordDeclaration } from "../../reader/types/types.ts";
import { classStep } from "../lower/places.ts";

/** What an object with virtual functions holds a number for: its class, and where in it the number stands. */
export interface Mark {
  readonly record: RecordDeclaration;
  readonly offset: number;
}

/** A virtual function as the object's class has it. */
export interface Chosen {
  readonly symbol: FunctionSymbol;
  /** Bytes from where the number stands to the part of the object that the function belongs to. */
  readonly step: number;
}

/** Which class objects are of, and which functions these have in place of their bases'. */
export class Classes {
  readonly #members: ReadonlyMap<RecordDeclaration, ClassMembers>;
  readonly #marks: Mark[] = [];
  readonly #methods: FunctionSymbol[] = [];
  readonly #chosen = new Map<number, Chosen | undefined>();

  constructor(members: ReadonlyMap<RecordDeclaration, ClassMembers>) {
    this.#members = members;
  }

  membersOf(record: RecordDeclaration): ClassMembers | undefined {
    return this.#members.get(record);
  }

  /** From 1: memory that no constructor has written holds 0. */
  markNumber(record: RecordDeclaration, offset: number): number {
    const known = this.#marks.findIndex((mark) => mark.record === record && mark.offset === offset);
    if (known >= 0) return known + 1;
    return this.#marks.push({ record, offset });
  }

  /** What an object with this number is, and where in it the number stands. */
  marked(mark: number): Mark | undefined {
    return this.#marks[mark - 1];
  }

  methodNumber(symbol: FunctionSymbol): number {
    const known = this.#methods.indexOf(symbol);
    return known >= 0 ? known : this.#methods.push(symbol) - 1;
  }

  /** The function that is called on an object with this mark; undefined where it has no such function. */
  chosen(method: number, mark: number): Chosen | undefined {
    const key = method * 0x1_0000 + mark;
    if (!this.#chosen.has(key))
      this.#chosen.set(key, this.#choose(this.#methods[method], this.#marks[mark - 1]));
    return this.#chosen.get(key);
  }

  /** The function of this name with so many parameters in an object's class or its bases. */
  named(name: string, parameters: number, mark: number): Chosen | undefined {
    const found = this.#marks[mark - 1];
    return (
      found &&
      this.#search(
        found,
        found.record,
        (symbol) => symbol.name === name && symbol.type.parameters.length === parameters,
      )
    );
  }

  #choose(method: FunctionSymbol | undefined, mark: Mark | undefined): Chosen | undefined {
    if (method === undefined || mark === undefined) return undefined;
    return this.#search(
      mark,
      mark.record,
      (symbol) => symbol.name === method.name && overrides(symbol, method),
    );
  }

  #search(
    mark: Mark,
    record: RecordDeclaration,
    isMeant: (symbol: FunctionSymbol) => boolean,
  ): Chosen | undefined {
    const symbol = this.#members.get(record)?.functions.find(isMeant);
    if (symbol !== undefined) return { symbol, step: classStep(mark.record, record) - mark.offset };
    for (const base of record.bases) {
      const found = this.#search(mark, base.record, isMeant);
      if (found !== undefined) return found;
    }
    return undefined;
  }
}

/** Units have declarations of their own of the classes that parameters name: these are the same by their names (C++11 3.2p5). */
function overrides(symbol: FunctionSymbol, method: FunctionSymbol): boolean {
  if (sameSignature(symbol.type, method.type)) return true;
  const text = ({ type }: FunctionSymbol): string =>
    `${type.parameters.map(typeText).join(",")} ${type.const} ${type.variadic}`;
  return text(symbol) === text(method);
}
