import type { Machine } from "../../interpreter/machine.ts";
import type { OutsideFunction, Stop } from "../../interpreter/outcome.ts";
import type { AvrChip } from "../../model/chips/chip.ts";
import type { Program } from "../../reader/program/program.ts";
import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { FirmwareChip } from "../engines/firmware-chip.ts";
import type { InterpretedFirmware } from "../engines/interpreter-engine.ts";
import { CallAccess, HandlerAccess } from "./access.ts";
import { bufferSizes } from "./buffer-sizes.ts";
import type { CoreFunction, CoreFunctions, CoreHandlers } from "./core-function.ts";
import { turnCycles } from "./function-cycles.ts";
import { pinFunctions } from "./pin-functions.ts";
import { PinInterrupts } from "./pin-interrupts.ts";
import { Pins } from "./pins.ts";
import { printing } from "./printing.ts";
import { pulseFunctions } from "./pulses.ts";
import { refusalOf } from "./refused.ts";
import { usualVectorName } from "./registers.ts";
import { SerialFunctions } from "./serial-functions.ts";
import { initialise } from "./start-up.ts";
import { CoreTime } from "./time.ts";
import { timeFunctions } from "./time-functions.ts";

export interface SketchCoreRequest {
  readonly program: Program;
  readonly model: AvrChip;
  /** Hz, as `F_CPU` has it; below 1 MHz nothing of the core runs. */
  readonly clockHz: number;
  readonly chip: FirmwareChip;
  /** Macros that the build gives to the core's sources, too. */
  readonly defines: ReadonlyMap<string, string>;
}

/**
 * The sketch core for one run of a firmware: what it does to the chip's registers is what arduino-core-avr does, in the
 * cycles of `function-cycles.ts`. `start` is undefined for a firmware that is no sketch or has a `main` of its own; it
 * may call the core's functions all the same.
 */
export function sketchCore(
  request: SketchCoreRequest,
): Pick<InterpretedFirmware, "outside" | "handlers" | "start"> {
  const { program, model, clockHz, chip, defines } = request;
  const own = (name: string): FunctionSymbol | undefined =>
    program.functions.find(
      (symbol) => symbol.name === name && symbol.memberOf === undefined && symbol.definition !== undefined,
    );
  const ownVectors = new Set(
    program.functions.flatMap(({ vector, definition }) =>
      vector === undefined || definition === undefined ? [] : [usualVectorName(model, vector)],
    ),
  );
  const handlers: CoreHandlers = new Map();
  const pins = new Pins(model);
  const time = new CoreTime(model, clockHz);
  const pinInterrupts = new PinInterrupts(model, handlers, ownVectors);
  const serial = new SerialFunctions({
    model,
    clockHz,
    handlers,
    ownVectors,
    buffers: bufferSizes(model, defines),
  });
  const overflow = usualVectorName(model, "TIMER0_OVF_vect");
  // `main.cpp` of the core is linked where nobody else has a `main`.
  const isSketch =
    own("main") === undefined &&
    (program.units.some(({ prelude }) => prelude.length > 0) || own("setup") !== undefined);
  if (isSketch) handlers.set(overflow, time.overflowHandler);
  const functions: CoreFunctions = {
    ...pinFunctions(pins),
    ...timeFunctions(time, clockHz, own("yield") !== undefined),
    ...pulseFunctions(pins, time),
    ...pinInterrupts.functions,
    init: ({ access, surroundings }) => {
      if (clockHz < 1_000_000) surroundings.refuse("`init` with a clock below 1 MHz");
      handlers.set(overflow, time.overflowHandler);
      initialise(model, clockHz, access);
      return undefined;
    },
    initVariant: () => undefined,
  };
  const bodyOf = (symbol: FunctionSymbol): CoreFunction | undefined => {
    const { memberOf, name } = symbol;
    if (!symbol.standIn) return undefined;
    const refusal = refusalOf(symbol);
    if (refusal !== undefined) return ({ surroundings }) => surroundings.refuse(refusal);
    const among =
      memberOf === undefined ? functions : memberOf.name === "HardwareSerial" ? serial.functions : {};
    return Object.hasOwn(among, name) ? among[name] : undefined;
  };
  const outside: OutsideFunction = (symbol) => {
    const body = bodyOf(symbol);
    if (body === undefined) return printing(symbol);
    return (parameters, _memory, surroundings) =>
      body({ access: new CallAccess(chip, surroundings), parameters: parameters.map(Number), surroundings });
  };

  const run = (machine: Machine): Stop | undefined => {
    const setup = own("setup");
    const loop = own("loop");
    if (setup === undefined || loop === undefined) return missing(setup === undefined ? "setup" : "loop");
    // `clockCyclesPerMicrosecond()` would be 0, and the core would divide by it.
    if (clockHz < 1_000_000) {
      const message = "cannot run: the sketch core needs a clock of 1 MHz or more";
      return { reason: "cannot-run", message, at: undefined };
    }
    if (ownVectors.has(overflow)) {
      const message = `cannot run: a handler of your own for ${overflow}, which the sketch core has: it does not link`;
      return { reason: "cannot-run", message, at: undefined };
    }
    const events = model.usarts.flatMap(({ number }) => {
      const suffix = number === 0 ? "" : String(number);
      const event = own(`serialEvent${suffix}`);
      return event === undefined ? [] : [{ event, port: `Serial${suffix}` }];
    });
    time.begin();
    initialise(model, clockHz, new HandlerAccess(chip));
    for (const symbol of [own("initVariant"), setup]) {
      const outcome = symbol && machine.call(symbol, []);
      if (outcome?.kind === "stopped") return outcome.stop;
    }
    const turnBegins = machine.turns();
    for (;;) {
      turnBegins();
      const due = events.filter(({ port }) => serial.waiting(port) > 0).map(({ event }) => event);
      for (const symbol of [...due, loop]) {
        const outcome = machine.call(symbol, []);
        if (outcome.kind === "stopped") return outcome.stop;
      }
      const waited = machine.wait(turnCycles.main);
      if (waited.kind === "stopped") return waited.stop;
    }
  };
  return { outside, handlers, start: isSketch ? run : undefined };
}

function missing(name: string): Stop {
  return { reason: "cannot-run", message: `there is no \`${name}\``, at: undefined };
}
