import type { ChipCore } from "./chip-core.ts";
import type { CycleTask } from "./cycle-events.ts";
import type { Bit, Interrupt } from "./interrupts.ts";

/** Frequency of the watchdog's own oscillator. ATmega328P datasheet DS40002061A, "Watchdog Timer", as avr8js has it. */
const oscillatorHz = 128_000;
/** Its cycles in the shortest time-out; each step of the prescaler doubles them. */
const shortest = 2048;
/** Cycles of the chip in which WDE may be cleared and the time-out changed after WDCE was written. */
const changeCycles = 4;

/** The watchdog: its interrupt, its reset, and the timed sequence that guards it. Absent where a chip's register lacks WDIE. */
export class Watchdog {
  readonly #core: ChipCore;
  readonly #onReset: () => void;
  readonly #task: CycleTask;
  readonly #interrupt: Interrupt | undefined;
  readonly #change: Bit | undefined;
  readonly #enable: Bit | undefined;
  readonly #interruptEnable: Bit | undefined;
  readonly #prescaler: readonly (Bit | undefined)[];
  readonly #resetFlag: Bit | undefined;
  #changeUntil = -1;
  /** The cycle from which the time-out counts. */
  #since = 0;

  /** `onReset` is called where the chip is to be reset. */
  constructor(core: ChipCore, onReset: () => void) {
    this.#core = core;
    this.#onReset = onReset;
    this.#task = core.events.task(() => this.#timeOut());
    this.#change = core.bit("WDCE");
    this.#enable = core.bit("WDE");
    this.#interruptEnable = core.bit("WDIE");
    this.#prescaler = ["WDP3", "WDP2", "WDP1", "WDP0"].map((name) => core.bit(name));
    this.#resetFlag = core.bit("WDRF");
    this.#interrupt = core.interrupt("WDT_vect", core.bit("WDIF"), this.#interruptEnable, {
      clearedBy: "taking",
      plainFlag: false,
      plainEnable: false,
      onTaken: () => {
        // In interrupt and reset mode the handler is entered once; the next time-out resets.
        if (core.isSet(this.#enable)) core.write(this.#interruptEnable, false);
        this.#interrupt?.refresh();
      },
    });
    const address = this.#enable?.address;
    if (address === undefined) return;
    core.cpu.onWatchdogReset = () => this.restart();
    core.cpu.writeHooks[address] = (value, old) => {
      this.#write(value, old, address);
      return true;
    };
  }

  get isRunning(): boolean {
    return this.#core.isSet(this.#enable) || this.#core.isSet(this.#interruptEnable);
  }

  /** The WDR instruction. */
  restart(): void {
    this.#since = this.#core.now;
    this.#schedule();
  }

  /** After a reset of the chip: where the watchdog made it, it runs on with the shortest time-out. */
  reset(): void {
    this.#changeUntil = -1;
    if (this.#core.isSet(this.#resetFlag)) this.#core.write(this.#enable, true);
    this.restart();
  }

  #write(value: number, old: number, address: number): void {
    const { cpu, now } = this.#core;
    const mask = (bit: Bit | undefined) => bit?.mask ?? 0;
    const enable = mask(this.#enable);
    const change = mask(this.#change);
    const flag = mask(this.#interrupt?.source.flag);
    const guarded = this.#prescaler.reduce((all, bit) => all | mask(bit), 0);
    const mayChange = now <= this.#changeUntil && (value & change) === 0;
    let next = (old & flag) | (value & mask(this.#interruptEnable));
    next |= mayChange ? value & guarded : old & guarded;
    next |= mayChange ? value & enable : (old | value) & enable;
    if (this.#core.isSet(this.#resetFlag)) next |= enable;
    if ((value & change) !== 0 && (value & enable) !== 0) {
      this.#changeUntil = now + changeCycles;
      next |= change;
    } else if (mayChange) this.#changeUntil = -1;
    const ran = this.isRunning;
    cpu.data[address] = next;
    if ((value & flag) !== 0) this.#interrupt?.clear();
    else this.#interrupt?.refresh();
    if (ran !== this.isRunning) this.restart();
    // Another time-out is another tap of the same counter, which goes on.
    else this.#schedule();
  }

  #schedule(): void {
    const { events, now, clock } = this.#core;
    if (!this.isRunning) events.cancel(this.#task);
    else {
      const step = this.#core.number(this.#prescaler);
      const cycles = Math.round((shortest * 2 ** step * clock.hz) / oscillatorHz);
      events.at(this.#task, Math.max(now + 1, this.#since + cycles));
    }
  }

  #timeOut(): void {
    const waits = this.#core.isSet(this.#interruptEnable) && this.#interrupt?.isFlagged !== true;
    if (this.#core.isSet(this.#enable) && !waits) {
      this.#onReset();
      return;
    }
    this.#interrupt?.raise();
    this.restart();
  }
}
