import type { TypedExpression, Variable } from "../../reader/typed/nodes.ts";
import type { Field, Type } from "../../reader/types/types.ts";
import type { Place, Root } from "./places.ts";
import type { Register, Trace, Value } from "./values.ts";

/** What a side of a branch wrote: the values that its places ended with. */
export type Changes = ReadonlyMap<Place, Value | undefined>;

const noChanges: Changes = new Map();

/** What interrupt handlers write, or what is written at all, as a trace to it. */
export interface Sharing {
  variable(variable: Variable): Trace | undefined;
  field(field: Field): Trace | undefined;
}

/** What a call depends on: the places outside it that it reads or writes, and what they held at its start. */
export interface Recording {
  /** Depth of the call; objects made as deep or deeper are its own. */
  readonly depth: number;
  readonly found: Map<Place, Value | undefined>;
  /** It depends on something else as well. */
  spoilt: boolean;
}

/**
 * All places of a walk and their values. Writes go onto a trail, so that the walk can go back to a branch,
 * walk its other side, and join what both have written.
 */
export class Memory {
  readonly #sharing: Sharing;
  readonly #canonicalField: (field: Field) => Field;
  readonly #variables = new Map<Variable, Place>();
  readonly #registers = new Map<string, Place>();
  readonly #literals = new Map<TypedExpression, Place>();
  readonly #byField = new Map<Field, Place[]>();
  readonly #recordings: Recording[] = [];
  readonly #trailPlaces: Place[] = [];
  readonly #trailValues: (Value | undefined)[] = [];

  constructor(sharing: Sharing, canonicalField: (field: Field) => Field) {
    this.#sharing = sharing;
    this.#canonicalField = canonicalField;
  }

  placeOf(variable: Variable): Place {
    let place = this.#variables.get(variable);
    if (place === undefined) {
      place = rootPlace(variable, variable.type, this.#sharing.variable(variable));
      this.#variables.set(variable, place);
    }
    return place;
  }

  /** Undefined where the variable was never met. */
  knownPlaceOf(variable: Variable): Place | undefined {
    return this.#variables.get(variable);
  }

  registerPlace(register: Register, latch: boolean): Place {
    let place = this.#registers.get(register.name);
    if (place === undefined) {
      place = rootPlace({ kind: "register", register, latch }, undefined, undefined);
      this.#registers.set(register.name, place);
    }
    return place;
  }

  get registers(): Iterable<Place> {
    return this.#registers.values();
  }

  /** An object without a name, made `depth` calls deep. */
  temporary(type: Type | undefined, depth: number): Place {
    const place = rootPlace({ kind: "temporary", literal: undefined }, type, undefined);
    place.depth = depth;
    return place;
  }

  stringPlace(literal: Extract<TypedExpression, { kind: "string" }>): Place {
    let place = this.#literals.get(literal);
    if (place === undefined) {
      place = rootPlace({ kind: "temporary", literal }, literal.type, undefined);
      this.#literals.set(literal, place);
    }
    return place;
  }

  member(of: Place, named: Field): Place {
    const field = this.#canonicalField(named);
    const known = of.children?.get(field);
    if (known !== undefined) return known;
    const place = this.#child(of, field, field.type, of.shared ?? this.#sharing.field(field));
    const alike = this.#byField.get(field);
    if (alike === undefined) this.#byField.set(field, [place]);
    else alike.push(place);
    return place;
  }

  element(of: Place, index: number): Place {
    const type = of.type?.kind === "array" ? of.type.of : undefined;
    return of.children?.get(index) ?? this.#child(of, index, type, of.shared);
  }

  #child(of: Place, key: Field | number, type: Type | undefined, shared: Trace | undefined): Place {
    const place: Place = {
      root: of.root,
      of,
      key,
      type,
      value: undefined,
      shared,
      settled: undefined,
      children: undefined,
      depth: of.depth,
    };
    of.children ??= new Map();
    of.children.set(key, place);
    return place;
  }

  /** All places that are this member of some object. */
  placesOf(field: Field): readonly Place[] {
    return this.#byField.get(field) ?? [];
  }

  write(place: Place, value: Value | undefined): void {
    if (this.#recordings.length > 0) this.touch(place);
    this.#trailPlaces.push(place);
    this.#trailValues.push(place.value);
    place.value = value;
  }

  /** The object is made anew, `depth` calls deep. */
  remake(place: Place, depth: number): void {
    place.depth = depth;
    for (const child of place.children?.values() ?? []) this.remake(child, depth);
  }

  /** Writes `value` over the place and all its members and elements, as far as they were met. */
  overwrite(place: Place, value: Value | undefined): void {
    this.write(place, value);
    if (place.children === undefined) return;
    for (const child of place.children.values()) this.overwrite(child, undefined);
  }

  /** Records what is touched until `stopRecording`; recordings lie in each other as calls do. */
  startRecording(depth: number): Recording {
    const recording: Recording = { depth, found: new Map(), spoilt: false };
    this.#recordings.push(recording);
    return recording;
  }

  stopRecording(): void {
    this.#recordings.pop();
  }

  /** No call that is being recorded can be taken over: it depends on more than places. */
  spoilRecordings(): void {
    for (const recording of this.#recordings) recording.spoilt = true;
  }

  /** The place is about to be read or written. */
  touch(place: Place): void {
    for (let at = this.#recordings.length - 1; at >= 0; at -= 1) {
      const recording = this.#recordings[at];
      if (recording === undefined || place.depth >= recording.depth || recording.found.has(place)) return;
      recording.found.set(place, place.value);
    }
  }

  mark(): number {
    return this.#trailPlaces.length;
  }

  undoTo(mark: number): void {
    if (this.#trailPlaces.length === mark) return;
    for (let at = this.#trailPlaces.length - 1; at >= mark; at -= 1) {
      const place = this.#trailPlaces[at];
      if (place !== undefined) place.value = this.#trailValues[at];
    }
    this.#trailPlaces.length = mark;
    this.#trailValues.length = mark;
  }

  /** What was written since; of objects made less than `depth` calls deep alone. */
  changesSince(mark: number, depth = Number.POSITIVE_INFINITY): Changes {
    if (this.#trailPlaces.length === mark) return noChanges;
    const changes = new Map<Place, Value | undefined>();
    for (let at = mark; at < this.#trailPlaces.length; at += 1) {
      const place = this.#trailPlaces[at];
      if (place !== undefined && place.depth < depth) changes.set(place, place.value);
    }
    return changes;
  }
}

function rootPlace(root: Root, type: Type | undefined, shared: Trace | undefined): Place {
  return {
    root,
    of: undefined,
    key: undefined,
    type,
    value: undefined,
    shared,
    settled: undefined,
    children: undefined,
    depth: 0,
  };
}
