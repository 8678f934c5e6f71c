import type { AvrChip } from "../../model/chips/chip.ts";
import type { Bit } from "../chip/interrupts.ts";
import type { HandlerBody } from "../engines/interpreter-engine.ts";
import { HandlerAccess } from "./access.ts";
import type { CoreCall, CoreFunctions, CoreHandlers } from "./core-function.ts";
import { functionCycles, handlerCycles } from "./function-cycles.ts";
import { bitAt } from "./registers.ts";

interface PinInterrupt {
  readonly vector: string;
  readonly enable: Bit;
  readonly senseMask: number;
  readonly senseShift: number;
  readonly senseAddress: number;
}

/** `attachInterrupt` and `detachInterrupt` (`WInterrupts.c`) and the handlers that call what was attached. */
export class PinInterrupts {
  readonly #interrupts: readonly (PinInterrupt | undefined)[];
  readonly #handlers: CoreHandlers;
  readonly #ownVectors: ReadonlySet<string>;
  /** Pointers to functions by the core's numbers; `nothing` where there is none. */
  readonly #attached = new Map<number, number>();

  /** `ownVectors` have a handler of the author's. */
  constructor(model: AvrChip, handlers: CoreHandlers, ownVectors: ReadonlySet<string>) {
    this.#interrupts = model.sketchInterrupts.map((name) => pinInterrupt(model, name));
    this.#handlers = handlers;
    this.#ownVectors = ownVectors;
  }

  readonly functions: CoreFunctions = {
    attachInterrupt: (call) => {
      const [number = 0, pointer = 0, mode = 0] = call.parameters;
      const { access, surroundings } = call;
      surroundings.changed();
      const interrupt = this.#numbered(number, call);
      access.wait(functionCycles.attachInterrupt.before);
      if (interrupt !== undefined) {
        if (pointer === 0) surroundings.refuse("`attachInterrupt` without a function");
        this.#attached.set(number, pointer);
        const { senseAddress, senseMask, senseShift, enable } = interrupt;
        access.change(senseAddress, senseMask, mode << senseShift);
        access.change(enable.address, 0, enable.mask);
      }
      access.wait(functionCycles.attachInterrupt.after);
      return undefined;
    },
    detachInterrupt: (call) => {
      const [number = 0] = call.parameters;
      call.surroundings.changed();
      const interrupt = this.#numbered(number, call);
      call.access.wait(functionCycles.detachInterrupt.before);
      if (interrupt !== undefined) {
        call.access.change(interrupt.enable.address, interrupt.enable.mask, 0);
        this.#attached.delete(number);
      }
      call.access.wait(functionCycles.detachInterrupt.after);
      return undefined;
    },
  };

  /** The core takes no notice of numbers that it does not have. Its handlers are all there once one is asked for. */
  #numbered(number: number, { surroundings }: CoreCall): PinInterrupt | undefined {
    for (const [each, interrupt] of this.#interrupts.entries()) {
      if (interrupt === undefined) continue;
      if (this.#ownVectors.has(interrupt.vector))
        surroundings.refuse(
          `\`attachInterrupt\` beside a handler of your own for ${interrupt.vector}: the sketch does not link`,
        );
      this.#handlers.set(interrupt.vector, this.#handler(each));
    }
    return this.#interrupts[number];
  }

  #handler(number: number): HandlerBody {
    return ({ chip, call }) => {
      const access = new HandlerAccess(chip);
      access.wait(handlerCycles.pinInterrupt.before);
      const pointer = this.#attached.get(number);
      const stop = pointer === undefined ? undefined : call(pointer);
      access.wait(handlerCycles.pinInterrupt.after);
      return stop;
    };
  }
}

function pinInterrupt(model: AvrChip, pinName: string): PinInterrupt | undefined {
  const found = model.pins.find(({ name }) => name === pinName)?.externalInterrupt;
  const [high, low] = found?.sense?.map((place) => bitAt(model, place)) ?? [];
  const enable = bitAt(model, found?.enable);
  if (found === undefined || high === undefined || low === undefined || enable === undefined)
    return undefined;
  return {
    vector: found.vector,
    enable,
    senseAddress: low.address,
    senseMask: high.mask | low.mask,
    senseShift: Math.log2(low.mask),
  };
}
