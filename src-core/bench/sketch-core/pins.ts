import { boardPins } from "../../model/chips/board-numbers.ts";
import type { AvrChip } from "../../model/chips/chip.ts";
import type { Bit } from "../chip/interrupts.ts";
import type { Access } from "./access.ts";
import type { CoreCall } from "./core-function.ts";
import { functionCycles } from "./function-cycles.ts";
import { bitNamed } from "./registers.ts";

/** A pin as the core's tables lead from its number to it. */
export interface CorePin {
  /** Data-space addresses of PINx, DDRx and PORTx. */
  readonly input: number;
  readonly direction: number;
  readonly output: number;
  readonly mask: number;
  /** COMxx1, which connects the timer that can drive the pin; undefined for a pin without one. */
  readonly timer: Bit | undefined;
}

/** The board's pins, read and written as `wiring_digital.c` does it. */
export class Pins {
  readonly #model: AvrChip;
  readonly #byNumber: ReadonlyMap<number, CorePin>;

  constructor(model: AvrChip) {
    this.#model = model;
    this.#byNumber = new Map(
      boardPins(model).flatMap(({ number, pin }) => {
        const port = model.ports.find(({ letter }) => letter === pin.port);
        if (port === undefined) return [];
        const output = pin.functions.find((each) => /^OC\d[ABC]$/.test(each));
        const made: CorePin = {
          input: port.pinRegister.address,
          direction: port.directionRegister.address,
          output: port.outputRegister.address,
          mask: 1 << pin.bit,
          timer: output === undefined ? undefined : bitNamed(model, `COM${output.slice(2)}1`),
        };
        return [[number, made] as const];
      }),
    );
  }

  /** Stops the run for a number beyond the core's table, behind which the core reads whatever is there. */
  numbered(number: number, { surroundings }: CoreCall): CorePin {
    const pin = this.#byNumber.get(number);
    if (pin !== undefined) return pin;
    return surroundings.refuse(`pin ${number}: a board with ${this.#model.printedName} has no such pin`);
  }

  setMode(pin: CorePin, mode: number, { access }: CoreCall): void {
    const { direction, output, mask } = pin;
    const isOutput = mode !== inputMode && mode !== pullUpMode;
    const cycles = functionCycles.pinMode;
    access.wait(cycles.before);
    if (isOutput) access.change(direction, 0, mask);
    else {
      access.change(direction, mask, 0);
      if (mode === pullUpMode) access.change(output, 0, mask);
      else access.change(output, mask, 0);
    }
    access.wait(cycles.after);
  }

  write(pin: CorePin, level: boolean, { access }: CoreCall): void {
    const { output, mask, timer } = pin;
    const { before, after } =
      timer === undefined ? functionCycles.digitalWrite : functionCycles.digitalWriteTimerPin;
    access.wait(before);
    disconnect(pin, access);
    access.change(output, level ? 0 : mask, level ? mask : 0);
    access.wait(after);
  }

  read(pin: CorePin, { access }: CoreCall): boolean {
    const { input, mask, timer } = pin;
    const { before, after } =
      timer === undefined ? functionCycles.digitalRead : functionCycles.digitalReadTimerPin;
    access.wait(before);
    disconnect(pin, access);
    const level = (access.read(input, mask) & mask) !== 0;
    access.wait(after);
    return level;
  }
}

/** `Arduino.h`: INPUT 0, OUTPUT 1, INPUT_PULLUP 2; whatever else makes an output, too. */
const inputMode = 0;
const pullUpMode = 2;

/** PWM is switched off first (`turnOffPWM`). */
function disconnect({ timer }: CorePin, access: Access): void {
  if (timer === undefined) return;
  if ((access.read(timer.address) & timer.mask) !== 0) access.change(timer.address, timer.mask, 0);
}
