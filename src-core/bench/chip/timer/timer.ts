import type { Level } from "../../wires/edge.ts";
import type { ChipCore } from "../chip-core.ts";
import type { CycleTask } from "../cycle-events.ts";
import type { Interrupt } from "../interrupts.ts";
import type { PortPin } from "../port.ts";
import type { PinAction, TimerSetting } from "./timer-setting.ts";

/** One compare channel. */
export interface TimerChannel {
  /** Data-space address of OCRnx, its low byte. */
  readonly address: number;
  readonly interrupt: Interrupt | undefined;
  readonly pin: PortPin | undefined;
}

/** The registers of one timer. */
export interface TimerParts {
  readonly number: number;
  readonly max: number;
  readonly counter: number;
  readonly channels: readonly TimerChannel[];
  readonly capture: { readonly address: number; readonly interrupt: Interrupt | undefined } | undefined;
  readonly overflow: Interrupt | undefined;
  /** What the control registers say now. */
  readonly setting: () => TimerSetting;
}

const NEVER = Number.POSITIVE_INFINITY;

/**
 * A timer/counter. It is counted on only when somebody asks for its count or when a flag is going to change: a flag
 * that is 1 already needs nothing, so that a timer whose flags nobody clears costs nothing.
 *
 * A flag is set at the tick at which the counter leaves the value that matched, as the timing diagrams of the
 * datasheets have it. The prescaler runs on while the timer stands still, so the first tick may come early.
 */
export class Timer {
  readonly #core: ChipCore;
  readonly #parts: TimerParts;
  readonly #task: CycleTask;
  readonly #isWide: boolean;
  readonly #matchListeners: { readonly matched: () => void; readonly isListening: () => boolean }[] = [];
  #setting: TimerSetting;
  #count = 0;
  #isDown = false;
  /** Ticks of the prescaler, since it was reset, that the count has seen. */
  #tick = 0;
  #prescalerCycle = 0;
  /** The compare values that count, and those that were written. */
  #compare: number[];
  #written: number[];
  #captured = 0;
  /** The byte that accesses to 16-bit registers share. */
  #temporary = 0;
  /** A write to the counter keeps the next tick from matching. */
  #isBlocked = false;
  readonly #outputs: Level[];

  constructor(core: ChipCore, parts: TimerParts) {
    this.#core = core;
    this.#parts = parts;
    this.#isWide = parts.max > 0xff;
    this.#task = core.events.task(() => this.settle());
    this.#setting = parts.setting();
    this.#compare = parts.channels.map(() => 0);
    this.#written = parts.channels.map(() => 0);
    this.#outputs = parts.channels.map(() => 0);
    this.#hookCounter(parts.counter);
    parts.channels.forEach(({ address }, channel) => {
      this.#hookWide(address, (value) => {
        this.#catchUp();
        this.#written[channel] = value;
        if (this.#setting.update === "at-once") this.#compare[channel] = value;
        this.#schedule();
      });
    });
    if (parts.capture !== undefined) {
      this.#hookWide(parts.capture.address, (value) => {
        this.#catchUp();
        this.#captured = value;
        this.#schedule();
      });
    }
  }

  get count(): number {
    this.#catchUp();
    return this.#count;
  }

  /** Called at each match of the first channel while it is listened to; `settle` when that changes. */
  onMatch(matched: () => void, isListening: () => boolean): void {
    this.#matchListeners.push({ matched, isListening });
  }

  /** Counts up to now and looks what comes next: after a flag was cleared or a match listener changed its mind. */
  settle(): void {
    this.#catchUp();
    this.#schedule();
  }

  /** A control register was written. */
  configure(): void {
    this.#catchUp();
    this.#setting = this.#parts.setting();
    if (this.#setting.update === "at-once") this.#compare = [...this.#written];
    this.#tick = this.#ticksNow();
    this.#parts.channels.forEach((_, channel) => {
      this.#connect(channel);
    });
    this.#schedule();
  }

  /** FOCnx: the pin does what it does at a match; no flag is set. */
  forceCompare(channel: number): void {
    this.#catchUp();
    if (!this.#setting.isPwm) this.#act(channel, this.#setting.actions[channel] ?? "none");
  }

  resetPrescaler(): void {
    this.#catchUp();
    this.#prescalerCycle = this.#core.now;
    this.#tick = 0;
    this.#schedule();
  }

  /** An edge of the clock pin. */
  edge(level: Level): void {
    const { clock } = this.#setting;
    if (clock.kind === "pin" && (clock.edge === "rising") === (level === 1)) {
      this.#advance(1);
    }
  }

  /** An edge of the capture pin that the control registers chose. */
  captureNow(): void {
    const { capture } = this.#parts;
    if (capture === undefined || this.#setting.top === "capture") return;
    this.#catchUp();
    this.#captured = this.#count;
    this.#core.cpu.data[capture.address] = this.#captured & 0xff;
    this.#core.cpu.data[capture.address + 1] = this.#captured >> 8;
    capture.interrupt?.raise();
  }

  /** After a reset of the chip, when its registers are 0; the first top of a timer that starts with another is given. */
  reset(): void {
    this.#count = 0;
    this.#isDown = false;
    this.#isBlocked = false;
    this.#temporary = 0;
    this.#captured = 0;
    this.#prescalerCycle = this.#core.now;
    this.#written = this.#parts.channels.map(({ address }) => this.#core.cpu.data[address] ?? 0);
    this.#compare = [...this.#written];
    this.#outputs.fill(0);
    this.#setting = this.#parts.setting();
    this.#tick = this.#ticksNow();
    this.#parts.channels.forEach((_, channel) => {
      this.#connect(channel);
    });
    this.#schedule();
  }

  #hookCounter(address: number): void {
    const { cpu } = this.#core;
    const write = (value: number) => {
      this.#catchUp();
      this.#count = value;
      this.#isDown = false;
      this.#isBlocked = true;
      this.#schedule();
    };
    this.#hookWide(address, write);
    cpu.readHooks[address] = () => {
      this.#core.happenings += 1;
      const { count } = this;
      this.#temporary = count >> 8;
      return count & 0xff;
    };
    if (this.#isWide) cpu.readHooks[address + 1] = () => this.#temporary;
  }

  /** The high byte of a 16-bit register waits until the low one is written. */
  #hookWide(address: number, written: (value: number) => void): void {
    const { cpu } = this.#core;
    cpu.writeHooks[address] = (value) => {
      cpu.data[address] = value;
      if (this.#isWide) cpu.data[address + 1] = this.#temporary;
      written(this.#isWide ? this.#temporary * 256 + value : value);
      return true;
    };
    if (!this.#isWide) return;
    cpu.writeHooks[address + 1] = (value) => {
      this.#temporary = value;
      return true;
    };
  }

  get #top(): number {
    const { top } = this.#setting;
    if (typeof top === "number") return top;
    return top === "capture" ? this.#captured : (this.#compare[top.channel] ?? 0);
  }

  #ticksNow(): number {
    const { clock } = this.#setting;
    if (clock.kind !== "divided") return 0;
    return Math.floor((this.#core.now - this.#prescalerCycle) / clock.divider);
  }

  #catchUp(): void {
    if (this.#setting.clock.kind !== "divided") return;
    const ticks = this.#ticksNow();
    this.#advance(ticks - this.#tick);
    this.#tick = ticks;
  }

  #schedule(): void {
    const { clock } = this.#setting;
    const nearest = clock.kind === "divided" ? this.#nearest() : NEVER;
    if (clock.kind !== "divided" || nearest === NEVER) this.#core.events.cancel(this.#task);
    else {
      const cycle = this.#prescalerCycle + (this.#tick + nearest) * clock.divider;
      this.#core.events.at(this.#task, cycle);
    }
  }

  /** Ticks until something changes that anybody can see. */
  #nearest(): number {
    let nearest = Math.min(this.#toOverflow(), this.#toUpdate(), this.#toBottomAction(), this.#toCapture());
    for (let channel = 0; channel < this.#compare.length; channel += 1) {
      nearest = Math.min(nearest, this.#toMatch(channel));
    }
    return nearest;
  }

  #advance(ticks: number): void {
    let left = ticks;
    while (left > 0) {
      const toOverflow = this.#toOverflow();
      const toUpdate = this.#toUpdate();
      const toBottomAction = this.#toBottomAction();
      const toCapture = this.#toCapture();
      const toMatch = this.#compare.map((_, channel) => this.#toMatch(channel));
      const step = Math.min(left, toOverflow, toUpdate, toBottomAction, toCapture, ...toMatch);
      const isBlocked = this.#isBlocked && step === 1;
      this.#isBlocked = false;
      this.#move(step);
      left -= step;
      if (step === toBottomAction) this.#actAtBottom();
      toMatch.forEach((distance, channel) => {
        if (step === distance && !isBlocked) this.#match(channel);
      });
      if (step === toCapture) this.#parts.capture?.interrupt?.raise();
      if (step === toUpdate) this.#compare = [...this.#written];
      if (step === toOverflow) this.#parts.overflow?.raise();
    }
  }

  #move(ticks: number): void {
    const top = this.#top;
    const { max } = this.#parts;
    if (this.#setting.shape === "up") {
      const toZero = this.#toZero();
      if (ticks < toZero) this.#count += ticks;
      else this.#count = (ticks - toZero) % (top + 1);
      return;
    }
    if (top === 0) {
      this.#count = 0;
      return;
    }
    const period = 2 * top;
    const position = (this.#position(top) + ticks) % period;
    this.#isDown = position >= top;
    this.#count = Math.min(max, position <= top ? position : period - position);
  }

  /** Where it stands between 0, the top, and 0 again. A top that was set below the count is turned at. */
  #position(top: number): number {
    const count = Math.min(this.#count, top);
    return this.#isDown ? (2 * top - count) % (2 * top) : count;
  }

  /** Counting up only: ticks until it is 0. Above its top it runs on to the highest number that fits. */
  #toZero(): number {
    const top = this.#top;
    return (this.#count > top ? this.#parts.max : top) - this.#count + 1;
  }

  /** Ticks until the tick after the one at which the count is `value`. */
  #toLeave(value: number): number {
    const top = this.#top;
    if (this.#setting.shape === "up") {
      const last = this.#count > top ? this.#parts.max : top;
      if (value >= this.#count && value <= last) return value - this.#count + 1;
      return value <= top ? this.#toZero() + value + 1 : NEVER;
    }
    if (value > top || top === 0) return NEVER;
    const period = 2 * top;
    const position = this.#position(top);
    const up = (value - position + period) % period;
    const down = (2 * period - value - position) % period;
    return Math.min(up, down) + 1;
  }

  #toMatch(channel: number): number {
    const interrupt = this.#parts.channels[channel]?.interrupt;
    const hasListener = channel === 0 && this.#matchListeners.some((each) => each.isListening());
    const isWatched =
      interrupt?.isFlagged === false || hasListener || this.#setting.actions[channel] !== "none";
    return isWatched ? this.#toLeave(this.#compare[channel] ?? 0) : NEVER;
  }

  #toOverflow(): number {
    const { overflow } = this.#parts;
    if (overflow === undefined || overflow.isFlagged) return NEVER;
    switch (this.#setting.overflow) {
      case "never":
        return NEVER;
      case "top":
        return this.#toZero();
      case "bottom":
        return this.#toLeave(0);
      case "max":
        return this.#count > this.#top || this.#top === this.#parts.max ? this.#toZero() : NEVER;
    }
  }

  #toUpdate(): number {
    const { update, shape } = this.#setting;
    if (update === "at-once") return NEVER;
    if (this.#written.every((value, channel) => value === this.#compare[channel])) return NEVER;
    if (shape === "up") return this.#toZero();
    const top = this.#top;
    if (top === 0) return 1;
    const period = 2 * top;
    const target = update === "top" ? top : 0;
    return (target - this.#position(top) + period) % period || period;
  }

  #toBottomAction(): number {
    const { isPwm, shape, actions } = this.#setting;
    if (!isPwm || shape === "up-down") return NEVER;
    return actions.some((action) => action === "clear" || action === "set") ? this.#toZero() : NEVER;
  }

  #toCapture(): number {
    const { capture } = this.#parts;
    if (this.#setting.top !== "capture" || capture?.interrupt?.isFlagged !== false) return NEVER;
    return this.#toLeave(this.#captured);
  }

  /** Called one tick after the count was that of the channel. */
  #match(channel: number): void {
    this.#parts.channels[channel]?.interrupt?.raise();
    if (channel === 0) for (const { matched } of this.#matchListeners) matched();
    const action = this.#setting.actions[channel] ?? "none";
    const value = this.#compare[channel] ?? 0;
    const isDownMatch = this.#setting.shape === "up-down" && this.#count < value && value !== this.#top;
    this.#act(channel, isDownMatch ? opposite(action) : action);
  }

  #actAtBottom(): void {
    this.#setting.actions.forEach((action, channel) => {
      if (action === "clear" || action === "set") this.#act(channel, opposite(action));
    });
  }

  #act(channel: number, action: PinAction): void {
    if (action === "none") return;
    const old = this.#outputs[channel] ?? 0;
    this.#outputs[channel] = action === "toggle" ? (old === 0 ? 1 : 0) : action === "set" ? 1 : 0;
    const pin = this.#parts.channels[channel]?.pin;
    pin?.port.refreshPin(pin.bit);
  }

  /** While a channel does something to its pin, an output has the channel's level instead of the port's. */
  #connect(channel: number): void {
    const pin = this.#parts.channels[channel]?.pin;
    if (pin === undefined) return;
    const isConnected = (this.#setting.actions[channel] ?? "none") !== "none";
    pin.port.override(
      pin.bit,
      `timer${this.#parts.number}`,
      isConnected
        ? (drive) =>
            drive === "low" || drive === "high" ? (this.#outputs[channel] === 1 ? "high" : "low") : drive
        : undefined,
    );
  }
}

function opposite(action: PinAction): PinAction {
  if (action === "clear") return "set";
  return action === "set" ? "clear" : action;
}
