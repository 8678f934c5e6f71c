import { oddParity } from "../../../model/frames.ts";
import type { Event } from "../../time/event-queue.ts";
import type { Time } from "../../time/time.ts";
import type { Level } from "../../wires/edge.ts";
import type { ReceiveFault } from "../record.ts";
import { PeriodMeter } from "./clock-periods.ts";
import type { MousePins } from "./mouse-pins.ts";

/** Clock pulses after which each bit is there; the start bit is there before the first. */
const dataBits = 8;
const parityClock = dataBits + 1;
const stopClock = parityClock + 1;

/**
 * Clocks one byte in: the host changes data while the clock is low, the mouse looks after it has risen. After the stop bit it
 * pulls data low for one more clock. While the stop bit is missing it clocks on until data is high, and does not
 * acknowledge.
 */
export class FrameIn {
  readonly meter = new PeriodMeter();
  readonly #pins: MousePins;
  readonly #ended: (byte: number, fault: ReceiveFault) => void;
  #timer: Event | undefined;
  #byte = 0;
  #parity: Level = 0;
  #sampled = 0;
  #fault: ReceiveFault = "none";
  #acknowledging = false;
  start: Time = 0;

  constructor(pins: MousePins, ended: (byte: number, fault: ReceiveFault) => void) {
    this.#pins = pins;
    this.#ended = ended;
  }

  receive(): void {
    this.#byte = 0;
    this.#sampled = 0;
    this.#fault = "none";
    this.#acknowledging = false;
    this.meter.restart();
    this.start = this.#pins.queue.now;
    this.#fall();
  }

  /** Power is gone or the mouse restarts: nothing more happens. */
  stop(): void {
    if (this.#timer !== undefined) this.#timer.cancelled = true;
    this.#timer = undefined;
  }

  readonly #fall = (): void => {
    const { queue } = this.#pins;
    this.meter.fell(queue.now);
    this.#pins.pullClock();
    this.#timer = queue.after(this.#pins.pullTime(), this.#rise);
  };

  readonly #rise = (): void => {
    const { queue, clock, timing } = this.#pins;
    this.#pins.releaseClock();
    if (this.#acknowledging) {
      this.#timer = queue.after(clock.riseTime + timing.acknowledgeRelease, this.#finish);
    } else {
      this.#timer = queue.after(clock.riseTime + timing.sample, this.#look);
    }
  };

  readonly #look = (): void => {
    const { queue, clock, data, timing } = this.#pins;
    if (clock.level === 0) {
      this.#end("cut-off");
      return;
    }
    this.#sampled += 1;
    if (this.#sampled <= dataBits) {
      this.#byte |= data.level << (this.#sampled - 1);
    } else if (this.#sampled === parityClock) {
      this.#parity = data.level;
    } else if (data.level === 0) {
      this.#fault = "stop";
    } else if (this.#sampled === stopClock) {
      this.#acknowledging = true;
      this.#pins.putData(0);
    } else {
      this.#end(this.#fault);
      return;
    }
    this.#timer = queue.after(this.#pins.draw(timing.clockHigh) - timing.sample, this.#fall);
  };

  readonly #finish = (): void => {
    this.#end(this.#parity === oddParity(this.#byte) ? "none" : "parity");
  };

  #end(fault: ReceiveFault): void {
    this.#timer = undefined;
    this.#pins.releaseBoth();
    this.#ended(this.#byte, fault);
  }
}
