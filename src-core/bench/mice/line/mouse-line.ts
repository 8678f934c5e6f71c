import type { Event } from "../../time/event-queue.ts";
import { never, type Time } from "../../time/time.ts";
import type { Edge } from "../../wires/edge.ts";
import type { ReceivedFrame, ReceiveFault, SentFrame } from "../record.ts";
import { FrameIn } from "./frame-in.ts";
import { FrameOut } from "./frame-out.ts";
import type { MousePins } from "./mouse-pins.ts";

/** A byte that waits to be sent. */
export interface OutgoingByte {
  readonly byte: number;
  /** Not before this moment, however long the bus has been idle. */
  readonly notBefore: Time;
  /** Frame bits that arrive turned over. */
  readonly turnedBits: number;
  readonly resent: boolean;
  readonly report: number | undefined;
}

/** Who decides what is sent. */
export interface LineOwner {
  /** What is to be sent next; asked again whenever the bus allows it. */
  outgoing(): OutgoingByte | undefined;
  sent(frame: SentFrame): void;
  received(frame: ReceivedFrame): void;
  requestUnnoticed(hold: Time): void;
}

/**
 * `off`: no power, or on another bus. `deaf`: the mouse tests itself. `listening`: it waits for the bus. The other two:
 * a byte is on the wires.
 */
type State = "off" | "deaf" | "listening" | "sending" | "receiving";

/** The mouse's end of the two wires: whose turn it is, byte by byte. */
export class MouseLine {
  readonly #pins: MousePins;
  readonly #owner: LineOwner;
  readonly #out: FrameOut;
  readonly #in: FrameIn;
  #state: State = "off";
  #timer: Event | undefined;
  #sending: OutgoingByte | undefined;
  /** The clock's last rising edge, whoever made it. */
  #rose: Time = 0;
  /** How long the host held the clock low before it let it rise for the last time; 0 after a pulse of the mouse's own. */
  #hold: Time = 0;
  /** When the mouse starts to clock the request in that is on the wires; undefined while there is none. */
  #takesRequestAt: Time | undefined;
  /** Of the request that is being clocked in: when the host let the clock go, and how long it had held it. */
  #released: Time = 0;
  #heldBefore: Time = 0;

  constructor(pins: MousePins, owner: LineOwner) {
    this.#pins = pins;
    this.#owner = owner;
    this.#out = new FrameOut(pins, (whole) => this.#sent(whole));
    this.#in = new FrameIn(pins, (byte, fault) => this.#received(byte, fault));
    pins.clock.onEdge((edge) => this.#clockEdge(edge));
    pins.data.onEdge(() => this.#dataEdge());
  }

  get isListening(): boolean {
    return this.#state === "listening";
  }

  /** Lets both wires go, whatever was on them, and takes no notice of them. */
  ignore(as: "off" | "deaf"): void {
    this.#state = as;
    this.#stopTimer();
    this.#out.stop();
    this.#in.stop();
    this.#takesRequestAt = undefined;
    this.#pins.releaseBoth();
  }

  /** Takes notice of the wires again. */
  listen(): void {
    this.#state = "listening";
    this.#consider();
  }

  /** There may be something to send now. */
  wake(): void {
    if (this.#state === "listening") this.#consider();
  }

  #clockEdge({ level, time, cause }: Edge): void {
    if (level === 1) {
      this.#rose = time;
      this.#hold = cause.party === "mouse" ? 0 : this.#pins.clock.pullLength(cause.party);
    }
    if (this.#state === "listening") this.#consider();
  }

  #dataEdge(): void {
    if (this.#state === "listening") this.#consider();
  }

  #consider(): void {
    this.#stopTimer();
    const { clock, data, queue, timing } = this.#pins;
    if (clock.level === 0) {
      this.#takesRequestAt = undefined;
    } else if (data.level === 0) {
      // The mouse's own acknowledge may still be fading.
      if (!data.isFreeBut("mouse")) this.#considerRequest();
    } else {
      this.#takesRequestAt = undefined;
      const next = this.#owner.outgoing();
      if (next === undefined) return;
      const time = Math.max(queue.now, this.#rose + timing.busHigh, next.notBefore);
      if (time < never) this.#timer = queue.at(time, this.#send);
    }
  }

  #considerRequest(): void {
    const { queue, timing } = this.#pins;
    if (this.#takesRequestAt === undefined) {
      if (this.#hold < timing.leastRequestHold) {
        this.#takesRequestAt = never;
        this.#owner.requestUnnoticed(this.#hold);
      } else {
        this.#takesRequestAt = queue.now + this.#pins.draw(timing.requestNoticed);
      }
    }
    if (this.#takesRequestAt < never) this.#timer = queue.at(this.#takesRequestAt, this.#takeRequest);
  }

  readonly #takeRequest = (): void => {
    this.#timer = undefined;
    this.#takesRequestAt = undefined;
    this.#state = "receiving";
    this.#released = this.#rose;
    this.#heldBefore = this.#hold;
    this.#in.receive();
  };

  #received(byte: number, fault: ReceiveFault): void {
    this.#state = "listening";
    const { meter, start } = this.#in;
    this.#owner.received({
      hold: this.#heldBefore,
      released: this.#released,
      start,
      end: this.#pins.queue.now,
      byte,
      fault,
      leastPeriod: meter.leastPeriod,
      mostPeriod: meter.mostPeriod,
    });
    this.wake();
  }

  readonly #send = (): void => {
    this.#timer = undefined;
    const next = this.#owner.outgoing();
    if (next === undefined) return;
    this.#state = "sending";
    this.#sending = next;
    this.#out.send(next.byte, next.turnedBits);
  };

  #sent(whole: boolean): void {
    this.#state = "listening";
    const of = this.#sending;
    if (of === undefined) return;
    this.#sending = undefined;
    const { meter, start, readableAt } = this.#out;
    this.#owner.sent({
      start,
      readableAt,
      end: this.#pins.queue.now,
      byte: of.byte,
      whole,
      clocks: meter.clocks,
      resent: of.resent,
      disturbed: of.turnedBits !== 0,
      report: of.report,
      leastPeriod: meter.leastPeriod,
      mostPeriod: meter.mostPeriod,
    });
    this.wake();
  }

  #stopTimer(): void {
    if (this.#timer !== undefined) this.#timer.cancelled = true;
    this.#timer = undefined;
  }
}
