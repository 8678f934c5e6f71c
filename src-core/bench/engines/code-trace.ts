import type { CallWatcher } from "../../interpreter/outcome.ts";
import type { At, FunctionSymbol } from "../../reader/typed/nodes.ts";
import { type Time, us } from "../time/time.ts";

/** A function of the firmware at work, or an interrupt: one call, or several with hardly any time between them. */
export interface CodeSpan {
  /** Of the function as the source has it, or the vector as `INT0_vect`. */
  readonly name: string;
  readonly kind: "function" | "interrupt";
  /** How many functions called it, one by the other; what an interrupt calls is counted from that interrupt. */
  readonly depth: number;
  /** It is an interrupt or was called from one. */
  readonly interrupting: boolean;
  /** Of the function; undefined for an interrupt that the sketch core handles. */
  readonly at: At | undefined;
  readonly from: Time;
  readonly to: Time;
  readonly calls: number;
}

/** What ran when. */
export interface CodeRecord {
  /** In order of the ends of their first calls. */
  readonly spans: readonly CodeSpan[];
  /** Calls of one function are one span where the pauses between them are not longer. */
  readonly resolution: Time;
}

/** A quarter of the clock's period of a mouse is a pause that a picture of its bits can show; our own choice. */
const finest: Time = 20 * us;
/** More spans than these are told more coarsely. */
const most = 50_000;
const coarser = 4;

type Kept = { -readonly [Key in keyof CodeSpan]: CodeSpan[Key] };
type Called = Pick<FunctionSymbol, "qualifiedName" | "vector" | "at">;
type Open = Omit<CodeSpan, "to" | "calls">;

/**
 * Records which function and which interrupt ran when, in room that does not grow with the run: the more there is to tell, the
 * longer are the pauses that are passed over.
 */
export class CodeTrace implements CallWatcher {
  readonly #now: (untold: number) => Time;
  readonly #most: number;
  readonly #open: Open[] = [];
  #kept: Kept[] = [];
  #resolution = finest;
  /** By name, then by `slotOf`: the last span of it. */
  #last = new Map<string, (Kept | undefined)[]>();

  /** `now` is the moment so many cycles behind those that the chip knows of. */
  constructor(now: (untold: number) => Time, mostSpans = most) {
    this.#now = now;
    this.#most = mostSpans;
  }

  get record(): CodeRecord {
    return { spans: this.#kept, resolution: this.#resolution };
  }

  entered({ qualifiedName, vector, at }: Called, untold: number): void {
    if (vector !== undefined) {
      this.#interrupt(vector, at, untold);
      return;
    }
    const caller = this.#open.at(-1);
    this.#open.push({
      name: qualifiedName,
      kind: "function",
      interrupting: caller?.interrupting ?? false,
      depth: caller === undefined ? 0 : caller.depth + 1,
      at,
      from: this.#now(untold),
    });
  }

  left(untold: number): void {
    this.#end(untold);
  }

  /** A handler begins that is no function of the program. */
  interrupted(vector: string): void {
    this.#interrupt(vector, undefined, 0);
  }

  resumed(): void {
    this.#end(0);
  }

  #interrupt(name: string, at: At | undefined, untold: number): void {
    const interrupted = this.#open.at(-1);
    const depth = interrupted?.interrupting === true ? interrupted.depth + 1 : 0;
    this.#open.push({ name, kind: "interrupt", interrupting: true, depth, at, from: this.#now(untold) });
  }

  #end(untold: number): void {
    const open = this.#open.pop();
    if (open === undefined) return;
    const to = this.#now(untold);
    // Most calls follow right upon one like them: nothing is made for these.
    const last = this.#lastLike(open);
    if (last !== undefined && open.from - last.to <= this.#resolution) {
      last.to = to;
      last.calls += 1;
      return;
    }
    if (this.#kept.length >= this.#most) this.#tellCoarser();
    this.#keep({ ...open, to, calls: 1 });
  }

  #keep(span: Kept): void {
    const last = this.#lastLike(span);
    if (last !== undefined && span.from - last.to <= this.#resolution) {
      last.to = span.to;
      last.calls += span.calls;
      return;
    }
    this.#kept.push(span);
    const { name } = span;
    const ofName = this.#last.get(name) ?? [];
    ofName[slotOf(span)] = span;
    this.#last.set(name, ofName);
  }

  #lastLike(span: Open): Kept | undefined {
    return this.#last.get(span.name)?.[slotOf(span)];
  }

  #tellCoarser(): void {
    let lasting = 0;
    for (const ofName of this.#last.values()) lasting += ofName.filter((each) => each !== undefined).length;
    while (this.#kept.length > Math.max(this.#most / 2, lasting)) {
      this.#resolution *= coarser;
      const finer = this.#kept;
      this.#kept = [];
      this.#last = new Map();
      for (const span of finer) this.#keep(span);
    }
  }
}

/** Where the last span like this stands among those of its name. */
function slotOf({ depth, interrupting }: Open): number {
  return 2 * depth + (interrupting ? 1 : 0);
}
