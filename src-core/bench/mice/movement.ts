import { encodeReport } from "../../model/layouts/encode.ts";
import type { ButtonName, MovementName, ReportLayout } from "../../model/layouts/layout.ts";
import { type ReportValues, remainder } from "../../model/layouts/values.ts";
import { mouseDefaults, resolutions, scaledTwoToOne } from "../../model/mouse-settings.ts";
import type { Hand } from "../strokes/hand.ts";
import type { Time } from "../time/time.ts";
import type { Counts, MouseReport } from "./record.ts";

function countsPerMm(code: number): number {
  return resolutions.find((each) => each.code === code)?.countsPerMm ?? 1;
}

const defaultCountsPerMm = countsPerMm(mouseDefaults.resolution);

/**
 * The mouse's counters: what the hand moved since the last report, in counts of the resolution that is set. Parts of a count
 * stay for the next time.
 */
export class Movement {
  readonly hand: Hand;
  readonly #buttons: readonly ButtonName[];
  /** Counts of the hand that one count of the mouse is: a power of two, so that sums are exact. */
  #unit = 1;
  /** Where the hand was when the counters were at nothing. */
  #right = 0;
  #down = 0;
  #wheel = 0;
  /** Buttons that are down in the last report that the host was sent whole. */
  readonly #told = new Set<ButtonName>();

  constructor(hand: Hand, buttons: readonly ButtonName[]) {
    this.hand = hand;
    this.#buttons = buttons;
  }

  /** `code`: the argument of "set resolution". */
  setResolution(code: number): void {
    this.#unit = defaultCountsPerMm / countsPerMm(code);
  }

  counts(now: Time): Counts {
    this.hand.moveTo(now);
    return {
      x: whole((this.hand.right - this.#right) / this.#unit),
      y: whole((this.#down - this.hand.down) / this.#unit),
      wheel: this.hand.wheel - this.#wheel,
    };
  }

  /** Forgets what was counted, and gives it back. */
  clear(now: Time): Counts {
    const counts = this.counts(now);
    this.#right = this.hand.right;
    this.#down = this.hand.down;
    this.#wheel = this.hand.wheel;
    return counts;
  }

  /** Forgets which buttons the host was told of. */
  forgetButtons(): void {
    this.#told.clear();
  }

  isDown(button: ButtonName): boolean {
    return this.#buttons.includes(button) && this.hand.isPressed(button);
  }

  /** There is something that a report of this layout would say. */
  hasNews(layout: ReportLayout, now: Time): boolean {
    this.hand.moveTo(now);
    const counts = this.counts(now);
    if (layout.movements.some(({ name }) => counts[name] !== 0)) return true;
    return this.#buttons.some(
      (button) => layout.fields.includes(button) && this.isDown(button) !== this.#told.has(button),
    );
  }

  /** The host was sent a report whole. A report that is dropped tells nobody, so its buttons are news again. */
  tell({ values }: MouseReport): void {
    for (const button of this.#buttons) {
      const down = values[button];
      if (down === true) this.#told.add(button);
      else if (down === false) this.#told.delete(button);
    }
  }

  /** Makes a report and starts to count anew. */
  takeReport(layout: ReportLayout, scaling: "1:1" | "2:1", now: Time): MouseReport {
    const counted = this.counts(now);
    this.#right += counted.x * this.#unit;
    this.#down -= counted.y * this.#unit;
    this.#wheel += counted.wheel;
    const scaled = (count: number): number => (scaling === "2:1" ? scaledTwoToOne(count) : count);
    const buttons: { [name in ButtonName]?: boolean } = {};
    for (const button of this.#buttons) {
      if (!layout.fields.includes(button)) continue;
      buttons[button] = this.isDown(button);
    }
    const moved: ReportValues = { x: scaled(counted.x), y: scaled(counted.y), wheel: counted.wheel };
    const lost = remainder(layout, moved);
    const carried: { [name in MovementName]?: number } = {};
    for (const { name } of layout.movements) carried[name] = (moved[name] ?? 0) - (lost[name] ?? 0);
    return {
      sampled: now,
      bytes: encodeReport(layout, { ...moved, ...buttons }),
      values: { ...carried, ...buttons },
      lost: { x: lost.x ?? 0, y: lost.y ?? 0, wheel: lost.wheel ?? 0 },
      sentAt: undefined,
      readableAt: undefined,
    };
  }
}

/** Towards 0, and never -0. */
function whole(value: number): number {
  return Math.trunc(value) + 0;
}
