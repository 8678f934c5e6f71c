import type { At } from "../../reader/typed/nodes.ts";
import type { Misstep } from "../outcome.ts";

/** Undefined behaviour that a run met: each kind once a place, in the order in which it was met. */
export class Missteps {
  readonly found: Misstep[] = [];
  readonly #seen = new Set<string>();
  readonly #places: readonly (At | undefined)[];

  constructor(places: readonly (At | undefined)[]) {
    this.#places = places;
  }

  note(kind: Misstep["kind"], message: string, place: number): void {
    const key = `${kind} ${place}`;
    if (this.#seen.has(key)) return;
    this.#seen.add(key);
    const at = this.#places[place];
    if (at !== undefined) this.found.push({ kind, message, at });
  }
}
