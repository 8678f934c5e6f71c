import type { Chip } from "../../model/chips/chip.ts";
import { driveOf } from "../pins/pin-change.ts";
import type { Event, LoopEvent } from "../walk/events.ts";
import { eachOnce, holdingKind } from "../walk/in-order.ts";
import type { LineTraces } from "./line-traces.ts";
import { readsData } from "./polled-edges.ts";
import type { PortPins } from "./port-pins.ts";

/** Tells which loops wait for the lines, or for what the clock's handler writes, themselves or by loops inside. */
export class LineWaits {
  readonly #lines: LineTraces;
  readonly #pins: PortPins;
  readonly #chip: Chip | undefined;
  readonly #known = new Map<readonly Event[], string | undefined>();

  constructor(lines: LineTraces, pins: PortPins, chip: Chip | undefined) {
    this.#lines = lines;
    this.#pins = pins;
    this.#chip = chip;
  }

  /** The name of what a loop waits for. */
  of(loop: LoopEvent): string | undefined {
    if (this.#sends(loop)) return undefined;
    return this.ofItself(loop) ?? this.#in(loop.passes.at(-1) ?? []);
  }

  /** The same, where its own conditions depend on it. */
  ofItself(loop: LoopEvent): string | undefined {
    for (const trace of loop.waitsFor) {
      const of = this.#lines.of(trace);
      if (of !== undefined) return of.kind === "level" ? "lines" : of.name;
    }
    return undefined;
  }

  /** Whether a loop reads the bits of a byte, with or without those around the data bits: each has waits of its own. */
  readsBits({ form, turns = 0, passes }: LoopEvent): boolean {
    if (form !== "counted" || turns < dataBits || turns > bitsOfByte) return false;
    return eachOnce(passes.at(-1) ?? []).some((event) => readsData(event, this.#pins, this.#chip));
  }

  /** Whether a loop does more with the lines than to wait, such as to hold the mouse off. */
  changesPins({ passes }: LoopEvent): boolean {
    return passes.some(changesPins);
  }

  #in(events: readonly Event[]): string | undefined {
    if (!holdsLoop(events)) return undefined;
    if (this.#known.has(events)) return this.#known.get(events);
    let wait: string | undefined;
    for (const event of events) wait ??= this.#one(event);
    this.#known.set(events, wait);
    return wait;
  }

  #one(event: Event): string | undefined {
    if (event.kind === "call") return this.#in(event.events);
    if (event.kind === "loop") return this.of(event);
    let wait: string | undefined;
    if (event.kind === "branch") for (const side of event.sides) wait ??= this.#in(side);
    return wait;
  }

  /** Where the data line is pulled low, something is sent again and again; that is no wait. */
  #sends({ passes }: LoopEvent): boolean {
    const data = this.#pins.data?.pin;
    const isRequest = (event: Event): boolean =>
      event.kind === "pin" &&
      (data === undefined || event.change.pin === data) &&
      driveOf(event.change.after) === "low";
    return passes.some((pass) => changesPins(pass) && eachOnce(pass).some(isRequest));
  }
}

const holdsLoop = holdingKind("loop");
const changesPins = holdingKind("pin");

/** Frame table of the PS/2 article. */
const dataBits = 8;
const bitsOfByte = 11;
