import type { Register, Timer as TimerModel } from "../../../model/chips/chip.ts";
import { waveModes8, waveModes16 } from "../../../model/chips/timer-modes.ts";
import type { ChipCore } from "../chip-core.ts";
import type { Bit, Interrupt } from "../interrupts.ts";
import { hookAfter, type Ports } from "../port.ts";
import { Timer } from "./timer.ts";
import { pinAction, type TimerClock, type TimerSetting } from "./timer-setting.ts";

const letters = ["A", "B", "C"] as const;
const stopped: TimerClock = { kind: "stopped" };

/** The timers of a chip by their numbers, all but those of 10 bits. */
export function addTimers(core: ChipCore, ports: Ports): ReadonlyMap<number, Timer> {
  const timers = new Map<number, Timer>();
  for (const model of core.model.timers) {
    if (model.width === 10) continue;
    const isHighSpeed = core.register(`OCR${model.number}C`)?.width === 8;
    const setting = isHighSpeed ? highSpeedSetting(core, model) : usualSetting(core, model);
    timers.set(model.number, addTimer(core, ports, model, setting));
  }
  addPrescalerReset(core, timers);
  return timers;
}

function addTimer(core: ChipCore, ports: Ports, model: TimerModel, setting: () => TimerSetting): Timer {
  const { number, counter, control, compare } = model;
  let timer: Timer | undefined;
  const interrupt = (vector: string, flag: string, enable: string): Interrupt | undefined =>
    core.interrupt(vector, core.bit(flag), core.bit(enable), {
      clearedBy: "taking",
      plainFlag: true,
      plainEnable: true,
      // What would have set the flag while it was set is past.
      onClearing: () => timer?.settle(),
      onCleared: () => timer?.settle(),
    });
  const channels = compare.slice(0, letters.length).map(({ name, address }) => {
    const letter = name.slice(-1);
    return {
      address,
      interrupt: interrupt(
        `TIMER${number}_COMP${letter}_vect`,
        `OCF${number}${letter}`,
        `OCIE${number}${letter}`,
      ),
      pin: ports.pinOfFunction(`OC${number}${letter}`),
    };
  });
  const capture = core.register(`ICR${number}`);
  const made = new Timer(core, {
    number,
    max: model.width === 16 ? 0xffff : 0xff,
    counter: counter.address,
    channels,
    capture: capture && {
      address: capture.address,
      interrupt: interrupt(`TIMER${number}_CAPT_vect`, `ICF${number}`, `ICIE${number}`),
    },
    overflow: interrupt(`TIMER${number}_OVF_vect`, `TOV${number}`, `TOIE${number}`),
    setting,
  });
  timer = made;
  for (const { address } of control) hookAfter(core, address, () => made.configure());
  addForcedCompare(core, model, made);
  addClockPin(ports, number, made);
  addCapturePin(core, ports, number, made);
  return made;
}

function usualSetting(
  core: ChipCore,
  { number, width, control, prescalers }: TimerModel,
): () => TimerSetting {
  const mode = [3, 2, 1, 0].map((bit) => core.bit(`WGM${number}${bit}`));
  const select = [2, 1, 0].map((bit) => core.bit(`CS${number}${bit}`));
  const actions = letters.map((letter) => [1, 0].map((bit) => core.bit(`COM${number}${letter}${bit}`)));
  const modes = width === 16 ? waveModes16 : waveModes8;
  const name = control[0]?.name ?? "";
  return () => {
    const waveMode = modes[core.number(mode)];
    if (waveMode === undefined) core.tellNotSimulated(`${name}: reserved mode ${core.number(mode)}`);
    const wave = waveMode ?? modes[0];
    if (wave === undefined) throw new Error("a timer without a mode 0");
    return {
      ...wave,
      clock: clockOf(core.number(select), prescalers),
      actions: actions.map((bits, channel) => {
        const action = pinAction(core.number(bits));
        // In PWM modes 01 does something at channel A alone, and there where it is the top.
        const isReserved =
          wave.isPwm && action === "toggle" && (channel !== 0 || typeof wave.top === "number");
        return isReserved ? "none" : action;
      }),
    };
  };
}

/**
 * Timer 1 of ATtiny25/45/85: counts up to OCR1C and starts again, in PWM and with CTC1, else to 255. Register
 * descriptions of TCCR1 and GTCCR in the datasheet 2586, from memory.
 */
function highSpeedSetting(core: ChipCore, { prescalers }: TimerModel): () => TimerSetting {
  const select = [3, 2, 1, 0].map((bit) => core.bit(`CS1${bit}`));
  const clear = core.bit("CTC1");
  const pwm = ["PWM1A", "PWM1B"].map((name) => core.bit(name));
  const actions = ["A", "B"].map((letter) => [1, 0].map((bit) => core.bit(`COM1${letter}${bit}`)));
  const fastClock = core.bit("PCKE");
  return () => {
    const isPwm = core.number(pwm) !== 0;
    const isCleared = isPwm || core.isSet(clear);
    if (core.isSet(fastClock)) core.tellNotSimulated("PLLCSR: timer 1 from the fast peripheral clock");
    return {
      shape: "up",
      top: isCleared ? { channel: 2 } : 0xff,
      overflow: isPwm ? "top" : "max",
      update: isPwm ? "bottom" : "at-once",
      isPwm,
      clock: clockOf(core.number(select), prescalers),
      actions: actions.map((bits) => {
        const action = pinAction(core.number(bits));
        if (!isPwm || action !== "toggle") return action;
        core.tellNotSimulated("TCCR1: complementary PWM outputs");
        return "none";
      }),
    };
  };
}

function clockOf(select: number, prescalers: readonly (number | undefined)[]): TimerClock {
  if (select === 0) return stopped;
  const divider = prescalers[select];
  if (divider !== undefined) return { kind: "divided", divider };
  return { kind: "pin", edge: select === prescalers.length - 1 ? "rising" : "falling" };
}

/** FOCnx read as 0. */
function addForcedCompare(core: ChipCore, { number }: TimerModel, timer: Timer): void {
  letters.forEach((letter, channel) => {
    const force = core.bit(`FOC${number}${letter}`);
    if (force === undefined) return;
    hookAfter(core, force.address, (written) => {
      if ((written & force.mask) === 0) return;
      core.write(force, false);
      timer.forceCompare(channel);
    });
  });
}

function addClockPin(ports: Ports, number: number, timer: Timer): void {
  const pin = ports.pinOfFunction(`T${number}`);
  pin?.port.onLevel((bit, level) => {
    if (bit === pin.bit) timer.edge(level);
  });
}

function addCapturePin(core: ChipCore, ports: Ports, number: number, timer: Timer): void {
  const pin = ports.pinOfFunction(`ICP${number}`);
  const edge = core.bit(`ICES${number}`);
  pin?.port.onLevel((bit, level) => {
    if (bit === pin.bit && core.isSet(edge) === (level === 1)) timer.captureNow();
  });
}

/** Bits that reset a prescaler, and the timers that count by it; they read as 0 at once. */
function addPrescalerReset(core: ChipCore, timers: ReadonlyMap<number, Timer>): void {
  const control: Register | undefined = core.register("GTCCR");
  if (control === undefined) return;
  const hold = core.bit("TSM");
  const resets: readonly (readonly [Bit | undefined, (number: number) => boolean])[] = [
    [core.bit("PSRSYNC"), (number) => number !== 2],
    [core.bit("PSRASY"), (number) => number === 2],
    [core.bit("PSR0"), (number) => number === 0],
    [core.bit("PSR1"), (number) => number === 1],
  ];
  hookAfter(core, control.address, (written) => {
    if (core.isSet(hold)) core.tellNotSimulated("GTCCR: timers held by TSM");
    for (const [bit, isOf] of resets) {
      if (bit === undefined || (written & bit.mask) === 0) continue;
      core.write(bit, false);
      for (const [number, timer] of timers) if (isOf(number)) timer.resetPrescaler();
    }
  });
}
