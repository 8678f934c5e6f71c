import { expect } from "vitest";
import type { ButtonName } from "../../../../src-core/model/layouts/layout.ts";
import type { ReportValues } from "../../../../src-core/model/layouts/values.ts";
import type { InterpretedEncoder } from "./interpreted-encoder.ts";
import type { Mouse } from "./mice.ts";
import { gpmButtons, gpmWheelButtons, type PointerEvent } from "./pointer-events.ts";
import type { Receiver } from "./receiver.ts";

/** A report of these values goes to gpm; `event` is what gpm has to tell of it. */
interface Step {
  readonly values: ReportValues;
  readonly event: Partial<PointerEvent>;
}

/** What gpm tells of movements one after the other, in its own sense of y and by halves of y. */
export class Pointer {
  readonly #yGrows: Mouse["yGrows"];
  #odd = 0;

  constructor(yGrows: Mouse["yGrows"]) {
    this.#yGrows = yGrows;
  }

  moved([x, y]: readonly [number, number], buttons: readonly ButtonName[]): Step {
    const whole = this.#odd + (this.#yGrows === "down" ? y : -y);
    // No negative zero.
    const dy = Math.trunc(whole / 2) + 0;
    this.#odd = whole - 2 * dy;
    return { values: { x, y, ...pressed(buttons) }, event: { dx: x, dy, wheel: 0, buttons: sumOf(buttons) } };
  }
}

export function pressed(buttons: readonly ButtonName[]): ReportValues {
  return Object.fromEntries(buttons.map((button) => [button, true]));
}

function sumOf(buttons: readonly ButtonName[]): number {
  return buttons.reduce((sum, button) => sum + gpmButtons[button], 0);
}

/** Runs steps and compares what gpm tells. */
export class Trial {
  readonly #encoder: InterpretedEncoder;
  readonly #receiver: Receiver;

  constructor(encoder: InterpretedEncoder, receiver: Receiver) {
    this.#encoder = encoder;
    this.#receiver = receiver;
  }

  /** Sends a report with movement. What gpm tells before, of changes of buttons, is nothing that moves. */
  async move({ values, event }: Step): Promise<void> {
    this.#send(values);
    for (;;) {
      const found = await this.#receiver.next();
      if (found.dx === 0 && found.dy === 0 && found.wheel === 0) continue;
      this.#compare(values, found, event);
      return;
    }
  }

  /** Sends a report that changes buttons, of which gpm tells those that changed. */
  async change(values: ReportValues): Promise<PointerEvent> {
    this.#send(values);
    for (;;) {
      const found = await this.#receiver.next();
      if (found.buttons !== 0) return found;
    }
  }

  /** gpm tells a serial wheel as a button that is pressed for as long as the wheel turns. */
  async turnAsButton(wheel: number): Promise<void> {
    const buttons = wheel > 0 ? gpmWheelButtons.towards : gpmWheelButtons.away;
    this.#compare({ wheel }, await this.change({ wheel }), { buttons });
    this.#compare({}, await this.change({}), { buttons });
  }

  /**
   * gpm takes the wheel's byte for the one of five buttons, so that a turn away from the user, with ones in its
   * upper half, presses two of those; it tells the turn itself of the next report.
   */
  async turnAsMovement(wheel: number): Promise<void> {
    this.#send({ wheel });
    let found = await this.#receiver.next();
    if (found.wheel === 0) {
      this.#send({ wheel });
      found = await this.#receiver.next();
    }
    this.#compare({ wheel }, found, { dx: 0, dy: 0, wheel: -wheel });
    if (found.buttons !== 0) await this.change({});
  }

  #send(values: ReportValues): void {
    this.#receiver.send(this.#encoder.report(values));
  }

  #compare(values: ReportValues, found: PointerEvent, event: Partial<PointerEvent>): void {
    const bytes = this.#encoder.report(values);
    expect({ values, bytes, event: found }).toMatchObject({ values, bytes, event });
  }
}
