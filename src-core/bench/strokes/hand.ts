import type { ButtonName } from "../../model/layouts/layout.ts";
import { never, type Time } from "../time/time.ts";
import type { Stroke, StrokeStep } from "./stroke.ts";

/**
 * The hand on the mouse: where it is at a moment, in whole counts at the default resolution since the beginning. Asked for
 * later and later moments only. At rest until a stroke is performed.
 */
export class Hand {
  right = 0;
  down = 0;
  wheel = 0;
  readonly #pressed = new Set<ButtonName>();
  #steps: readonly StrokeStep[] = [];
  /** The step that is being made, and when it began. */
  #index = 0;
  #began: Time = 0;
  /** Where it began. */
  #fromRight = 0;
  #fromDown = 0;
  #fromWheel = 0;

  /** Begins a stroke; what is left of the one before is not done. Buttons stay as they are. */
  perform(stroke: Stroke, now: Time): void {
    this.moveTo(now);
    this.#steps = stroke.steps;
    this.#index = 0;
    this.#begin(now);
  }

  isPressed(button: ButtonName): boolean {
    return this.#pressed.has(button);
  }

  moveTo(now: Time): void {
    for (let step = this.#steps[this.#index]; step !== undefined; step = this.#steps[this.#index]) {
      const elapsed = now - this.#began;
      if (elapsed < step.over) {
        const part = elapsed / step.over;
        this.right = this.#fromRight + Math.trunc(step.right * part);
        this.down = this.#fromDown + Math.trunc(step.down * part);
        this.wheel = this.#fromWheel + Math.trunc(step.wheel * part);
        return;
      }
      this.right = this.#fromRight + step.right;
      this.down = this.#fromDown + step.down;
      this.wheel = this.#fromWheel + step.wheel;
      this.#index += 1;
      this.#begin(this.#began + step.over);
    }
  }

  /** From this moment on the hand may do something, as seen from `now`: now while it moves; `never` after the stroke. */
  nextChange(now: Time): Time {
    this.moveTo(now);
    const step = this.#steps[this.#index];
    if (step === undefined) return never;
    const moves = step.right !== 0 || step.down !== 0 || step.wheel !== 0;
    return moves ? now : this.#began + step.over;
  }

  #begin(time: Time): void {
    this.#began = time;
    this.#fromRight = this.right;
    this.#fromDown = this.down;
    this.#fromWheel = this.wheel;
    const step = this.#steps[this.#index];
    for (const button of step?.release ?? []) this.#pressed.delete(button);
    for (const button of step?.press ?? []) this.#pressed.add(button);
  }
}
