import type { Event, EventQueue } from "../time/event-queue.ts";
import type { Time } from "../time/time.ts";
import type { Cause, EdgeListener, Level, Party, WireName } from "./edge.ts";

/** What one party does to a wire that nobody may drive high. */
export type Drive = "released" | "low" | "high";

/** Something wrong on the wire itself. */
export interface Conflict {
  readonly time: Time;
  readonly wire: WireName;
  /** Driven high at all, or against somebody who pulls it low. */
  readonly kind: "driven-high" | "fight";
  readonly cause: Cause;
}

/**
 * A PS/2 line: low while somebody pulls it low, high after the pull-ups have charged it. Without a pull-up it stays
 * where it was. Whoever drives it high is noted; against somebody who pulls it low, low wins.
 */
export class OpenCollectorWire {
  readonly name: "clock" | "data";
  readonly conflicts: Conflict[] = [];
  /** From the moment when nobody pulls it low to the moment when it is read as high. */
  readonly riseTime: Time;
  readonly #queue: EventQueue;
  readonly #drives = new Map<Party, Drive>();
  readonly #pullUps = new Set<Party>();
  readonly #listeners: EdgeListener[] = [];
  #level: Level = 1;
  /** How many parties pull it low, and how many drive it high. */
  #lows = 0;
  #highs = 0;
  /** When each party began its last pull, and how long the last one that is over was. */
  readonly #pulledAt = new Map<Party, Time>();
  readonly #pullLengths = new Map<Party, Time>();
  #rising: Event | undefined;
  #risesBecause: Cause | undefined;

  constructor(name: "clock" | "data", queue: EventQueue, riseTime: Time) {
    this.name = name;
    this.#queue = queue;
    this.riseTime = riseTime;
  }

  get level(): Level {
    return this.#level;
  }

  driveOf(party: Party): Drive {
    return this.#drives.get(party) ?? "released";
  }

  /** How long a party's last pull was that is over; 0 where it never pulled. Not seen in edges while others pull as well. */
  pullLength(party: Party): Time {
    return this.#pullLengths.get(party) ?? 0;
  }

  /** Everybody except this party lets it go. */
  isFreeBut(party: Party): boolean {
    return this.#lows === (this.driveOf(party) === "low" ? 1 : 0);
  }

  /** Somebody else than this party pulls it up. */
  isPulledUpBut(party: Party): boolean {
    return this.#pullUps.size > (this.#pullUps.has(party) ? 1 : 0);
  }

  onEdge(listener: EdgeListener): void {
    this.#listeners.push(listener);
  }

  /** A pull-up is there or not; the mouse has one of its own on each line. */
  pullUp(party: Party, present: boolean, cause: Cause): void {
    if (present) this.#pullUps.add(party);
    else this.#pullUps.delete(party);
    this.#settle(cause);
  }

  drive(party: Party, drive: Drive, cause: Cause): void {
    const before = this.driveOf(party);
    if (before === drive) return;
    this.#drives.set(party, drive);
    if (drive === "low") this.#pulledAt.set(party, this.#queue.now);
    else if (before === "low") {
      this.#pullLengths.set(party, this.#queue.now - (this.#pulledAt.get(party) ?? 0));
    }
    this.#lows += (drive === "low" ? 1 : 0) - (before === "low" ? 1 : 0);
    this.#highs += (drive === "high" ? 1 : 0) - (before === "high" ? 1 : 0);
    if (drive === "high") {
      const kind = this.#lows > 0 ? "fight" : "driven-high";
      this.conflicts.push({ time: this.#queue.now, wire: this.name, kind, cause });
    }
    this.#settle(cause);
  }

  #settle(cause: Cause): void {
    if (this.#lows > 0) {
      this.#stopRising();
      this.#become(0, cause);
    } else if (this.#highs > 0) {
      this.#stopRising();
      this.#become(1, cause);
    } else if (this.#pullUps.size === 0) {
      this.#stopRising();
    } else if (this.#level === 0 && this.#rising === undefined) {
      this.#risesBecause = cause;
      this.#rising = this.#queue.after(this.riseTime, this.#rise);
    }
  }

  readonly #rise = (): void => {
    this.#rising = undefined;
    if (this.#risesBecause !== undefined) this.#become(1, this.#risesBecause);
  };

  #stopRising(): void {
    if (this.#rising !== undefined) this.#rising.cancelled = true;
    this.#rising = undefined;
  }

  #become(level: Level, cause: Cause): void {
    if (this.#level === level) return;
    this.#level = level;
    const edge = { time: this.#queue.now, wire: this.name, level, cause };
    for (const listener of this.#listeners) listener(edge);
  }
}
