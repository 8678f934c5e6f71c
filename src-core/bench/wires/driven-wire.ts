import type { EventQueue } from "../time/event-queue.ts";
import type { Cause, EdgeListener, Level, WireName } from "./edge.ts";

/** A line of the serial side at the PC's connector: one party drives it. 1 is mark or OFF, 0 space or ON. */
export class DrivenWire {
  readonly name: WireName;
  readonly #queue: EventQueue;
  readonly #listeners: EdgeListener[] = [];
  #level: Level;

  constructor(name: WireName, queue: EventQueue, level: Level) {
    this.name = name;
    this.#queue = queue;
    this.#level = level;
  }

  get level(): Level {
    return this.#level;
  }

  onEdge(listener: EdgeListener): void {
    this.#listeners.push(listener);
  }

  drive(level: Level, cause: Cause): void {
    if (this.#level === level) return;
    this.#level = level;
    const edge = { time: this.#queue.now, wire: this.name, level, cause };
    for (const listener of this.#listeners) listener(edge);
  }
}
