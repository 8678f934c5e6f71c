import type { Program } from "../../reader/program/program.ts";
import type { TypedExpression, Variable } from "../../reader/typed/nodes.ts";
import { hull, type Interval } from "./interval.ts";

/** How somebody may come to an object. */
interface Root {
  /**
   * `local`: by its name alone. `named`: by its name, in whichever function. `behind`: by pointers and references too, or by an
   * index, so that others may be the same.
   */
  reach: "local" | "named" | "behind";
}

/** A place as it is written: two that are written alike are the same. */
export interface Place {
  readonly key: string;
  readonly root: Root;
}

const behind: Root = { reach: "behind" };
const self: Root = { reach: "named" };

/** Names places. Variables have numbers: in different blocks there are different ones of one name. */
export class PlaceNames {
  readonly #program: Program;
  readonly #places = new Map<Variable, Place>();

  constructor(program: Program) {
    this.#program = program;
  }

  /** Undefined for what has no place of its own. */
  placeOf(expression: TypedExpression): Place | undefined {
    switch (expression.kind) {
      case "variable":
        return this.ofVariable(expression.variable);
      case "this":
        return { key: "(this)", root: self };
      case "member": {
        const object = this.placeOf(expression.object);
        return object && { ...object, key: `${object.key}.${expression.field.name}` };
      }
      case "dereference": {
        const pointer = this.placeOf(expression.operand);
        if (pointer === undefined || expression.operand.kind === "this") return pointer;
        return { key: `*${pointer.key}`, root: behind };
      }
      case "index": {
        const array = this.placeOf(expression.array);
        const index = this.placeOf(expression.index);
        return array && index && { key: `${array.key}[${index.key}]`, root: behind };
      }
      case "integer":
        return { key: `${expression.value}`, root: behind };
      case "address":
      case "convert":
        return this.placeOf(expression.operand);
      default:
        return undefined;
    }
  }

  ofVariable(variable: Variable): Place {
    const meant = this.#program.definingVariable(variable);
    let place = this.#places.get(meant);
    if (place === undefined) {
      const isOwn = meant.storage === "local" || meant.storage === "parameter";
      const reach = meant.type.kind === "reference" ? "behind" : isOwn ? "local" : "named";
      place = { key: `(${this.#places.size})`, root: { reach } };
      this.#places.set(meant, place);
    }
    return place;
  }
}

/** What is known of places at one point of a function. */
export class KnownPlaces {
  readonly #known: Map<string, { readonly place: Place; readonly value: Interval }>;

  constructor(known: KnownPlaces | undefined = undefined) {
    this.#known = new Map(known === undefined ? [] : known.#known);
  }

  places(): readonly Place[] {
    return [...this.#known.values()].map(({ place }) => place);
  }

  get({ key }: Place): Interval | undefined {
    return this.#known.get(key)?.value;
  }

  set(place: Place, value: Interval): void {
    this.#known.set(place.key, { place, value });
  }

  /** Something is stored there: what lies in it, and what may be the same by another name, is not known any more. */
  forget({ key, root }: Place): void {
    for (const [other, { place }] of this.#known) {
      const isSame =
        root.reach !== "local" && (root.reach === "behind" ? isShared(place) : place.root.reach === "behind");
      if (isSame || other.includes(key)) this.#known.delete(other);
    }
  }

  /** Code is run that may change whatever others can reach. */
  forgetShared(): void {
    for (const [key, { place }] of this.#known) if (isShared(place)) this.#known.delete(key);
  }

  /** What holds whichever of two ways was taken; undefined is a way that nobody comes along. */
  static either(one: KnownPlaces | undefined, other: KnownPlaces | undefined): KnownPlaces | undefined {
    if (one === undefined || other === undefined) return one ?? other;
    const both = new KnownPlaces();
    for (const [key, { place, value }] of one.#known) {
      const also = other.#known.get(key);
      if (also !== undefined) both.set(place, hull(value, also.value));
    }
    return both;
  }
}

function isShared({ root }: Place): boolean {
  return root.reach !== "local";
}
