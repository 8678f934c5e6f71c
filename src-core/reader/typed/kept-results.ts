import type { FunctionDefinition, FunctionSymbol } from "./nodes.ts";

type Bodies = Map<FunctionSymbol, FunctionDefinition | undefined>;

/** Bodies that whoever is being watched has asked for. */
let watched: Bodies | undefined;

/** Notes that a body was asked for. */
export function bodyWasAsked(symbol: FunctionSymbol, definition: FunctionDefinition | undefined): void {
  watched?.set(symbol, definition);
}

interface Kept<Result> {
  readonly result: Result;
  readonly bodies: Bodies;
}

/**
 * Results that are found again and again, each for a key: they stand as long as the declarations around them do
 * (`lasting`, of a unit or a program) and every body that finding them asked for is what it was.
 */
export class KeptResults<Key extends object, Result> {
  readonly #kept = new WeakMap<object, WeakMap<Key, Kept<Result>>>();

  #standing(lasting: object, key: Key): Kept<Result> | undefined {
    const known = this.#kept.get(lasting)?.get(key);
    return known !== undefined && stand(known.bodies) ? known : undefined;
  }

  /** What was found before, where it stands. */
  known(lasting: object, key: Key): Result | undefined {
    return this.#standing(lasting, key)?.result;
  }

  /** `find` may ask for nothing else that can change. */
  get(lasting: object, key: Key, find: () => Result): Result {
    const known = this.#standing(lasting, key);
    if (known !== undefined) return known.result;
    let kept = this.#kept.get(lasting);
    if (kept === undefined) {
      kept = new WeakMap();
      this.#kept.set(lasting, kept);
    }
    const outer = watched;
    const bodies: Bodies = new Map();
    watched = bodies;
    const result = find();
    watched = outer;
    for (const [symbol, definition] of bodies) watched?.set(symbol, definition);
    kept.set(key, { result, bodies });
    return result;
  }
}

/** Asks for each again, so that a result that stands on this one comes to know of them, too. */
function stand(bodies: Bodies): boolean {
  for (const [symbol, definition] of bodies) if (symbol.definition !== definition) return false;
  return true;
}
