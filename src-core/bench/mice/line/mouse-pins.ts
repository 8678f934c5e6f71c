import type { Random } from "../../../random.ts";
import type { EventQueue } from "../../time/event-queue.ts";
import type { Time } from "../../time/time.ts";
import type { Cause, Level } from "../../wires/edge.ts";
import type { OpenCollectorWire } from "../../wires/open-collector.ts";
import type { MouseTiming } from "../profile.ts";
import type { Spread } from "../spread.ts";

const byMouse: Cause = { party: "mouse", at: undefined };

/** The mouse's two pins and its sense of time. */
export class MousePins {
  readonly queue: EventQueue;
  readonly clock: OpenCollectorWire;
  readonly data: OpenCollectorWire;
  readonly timing: MouseTiming;
  readonly #random: Random;

  constructor(
    queue: EventQueue,
    clock: OpenCollectorWire,
    data: OpenCollectorWire,
    timing: MouseTiming,
    random: Random,
  ) {
    this.queue = queue;
    this.clock = clock;
    this.data = data;
    this.timing = timing;
    this.#random = random;
  }

  pullUps(present: boolean): void {
    this.clock.pullUp("mouse", present, byMouse);
    this.data.pullUp("mouse", present, byMouse);
  }

  pullClock(): void {
    this.clock.drive("mouse", "low", byMouse);
  }

  releaseClock(): void {
    this.clock.drive("mouse", "released", byMouse);
  }

  putData(level: Level): void {
    this.data.drive("mouse", level === 1 ? "released" : "low", byMouse);
  }

  releaseBoth(): void {
    this.releaseClock();
    this.putData(1);
  }

  draw(spread: Spread): Time {
    return spread.least === spread.most ? spread.least : this.#random.between(spread.least, spread.most);
  }

  /**
   * From pulling the clock to letting it go: the phase at the wire less the time in which the line rises, because
   * phases are given as they are at the wire.
   */
  pullTime(): Time {
    return Math.max(0, this.draw(this.timing.clockLow) - this.clock.riseTime);
  }
}
