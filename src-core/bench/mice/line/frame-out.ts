import { deviceToHostFrame } from "../../../model/frames.ts";
import { quantity } from "../../../model/quantities.ts";
import type { Event } from "../../time/event-queue.ts";
import type { Time } from "../../time/time.ts";
import { PeriodMeter } from "./clock-periods.ts";
import type { MousePins } from "./mouse-pins.ts";

/** Frames of all bytes, bit 0 of each the start bit. */
const frames: readonly number[] = Array.from({ length: 256 }, (_, byte) =>
  deviceToHostFrame(byte).reduce((bits, { level }, index) => bits | (level << index), 0),
);

const frameBits = deviceToHostFrame(0).length;

const lastDataBit = deviceToHostFrame(0).findLastIndex(({ role }) => role === "data");

/** After this clock the mouse looks for the last time whether the host cuts in. */
const lastLook = quantity("ps2.override-clock")?.max ?? frameBits;

/**
 * Sends one byte: data changes while the clock is high, the clock follows. Once per bit, when it changes data, the mouse
 * looks whether the host holds the clock low; then it lets both lines go.
 */
export class FrameOut {
  readonly meter = new PeriodMeter();
  readonly #pins: MousePins;
  readonly #ended: (whole: boolean) => void;
  #timer: Event | undefined;
  #bits = 0;
  #bit = 0;
  start: Time = 0;
  readableAt: Time | undefined;

  constructor(pins: MousePins, ended: (whole: boolean) => void) {
    this.#pins = pins;
    this.#ended = ended;
  }

  /** `turnedBits`: a mask of frame bits that arrive turned over; bit 1 is the lowest data bit. */
  send(byte: number, turnedBits: number): void {
    this.#bits = (frames[byte & 0xff] ?? 0) ^ turnedBits;
    this.#bit = 0;
    this.meter.restart();
    this.start = this.#pins.queue.now;
    this.readableAt = undefined;
    this.#put();
  }

  /** Power is gone or the mouse restarts: nothing more happens. */
  stop(): void {
    if (this.#timer !== undefined) this.#timer.cancelled = true;
    this.#timer = undefined;
  }

  #put(): void {
    this.#pins.putData((this.#bits >> this.#bit) & 1 ? 1 : 0);
    this.#timer = this.#pins.queue.after(this.#pins.timing.dataSetup, this.#fall);
  }

  readonly #fall = (): void => {
    const { queue } = this.#pins;
    this.meter.fell(queue.now);
    if (this.#bit === lastDataBit) this.readableAt = queue.now;
    this.#pins.pullClock();
    this.#timer = queue.after(this.#pins.pullTime(), this.#rise);
  };

  readonly #rise = (): void => {
    const { queue, clock, timing } = this.#pins;
    this.#pins.releaseClock();
    this.#bit += 1;
    const last = this.#bit === frameBits;
    const high = last ? 0 : this.#pins.draw(timing.clockHigh) - timing.dataSetup;
    this.#timer = queue.after(clock.riseTime + high, last ? this.#finish : this.#change);
  };

  readonly #change = (): void => {
    if (this.#pins.clock.level === 0 && this.#bit <= lastLook) {
      this.#timer = undefined;
      this.#pins.releaseBoth();
      this.#ended(false);
    } else {
      this.#put();
    }
  };

  readonly #finish = (): void => {
    this.#timer = undefined;
    this.#ended(true);
  };
}
