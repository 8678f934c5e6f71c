import type { Surroundings } from "../../interpreter/outcome.ts";
import type { AvrChip } from "../../model/chips/chip.ts";
import type { BufferSizes } from "./buffer-sizes.ts";
import type { CoreCall, CoreFunctions, CoreHandlers } from "./core-function.ts";
import { type FunctionCycles, functionCycles } from "./function-cycles.ts";
import { SerialPort } from "./serial-port.ts";

/** SERIAL_8N1 of `HardwareSerial.h`, which `begin` takes where nothing is said. */
const usualFormat = 0x06;

export interface SerialSetup {
  readonly model: AvrChip;
  /** F_CPU, Hz. */
  readonly clockHz: number;
  readonly handlers: CoreHandlers;
  /** Vectors that have a handler of the author's. */
  readonly ownVectors: ReadonlySet<string>;
  /** Undefined where the build says something that is not understood. */
  readonly buffers: BufferSizes | undefined;
}

/** Methods of `Serial`, `Serial1` and so on. */
export class SerialFunctions {
  readonly #setup: SerialSetup;
  /** By the names of the objects. */
  readonly #ports = new Map<string, SerialPort>();
  readonly #names = new Map<number, string>();

  constructor(setup: SerialSetup) {
    this.#setup = setup;
  }

  readonly functions: CoreFunctions = {
    begin: (call) => {
      const [, baud = 0, config = usualFormat] = call.parameters;
      const port = this.#port(call);
      if (baud === 0) call.surroundings.refuse("`begin` with 0 baud");
      call.surroundings.changed();
      port.begin(baud, config, call.access);
      return undefined;
    },
    end: (call) => {
      call.surroundings.changed();
      this.#port(call).end(call.access);
      return undefined;
    },
    available: (call) => this.#looked(call, functionCycles.available, (port) => port.available()),
    peek: (call) =>
      this.#looked(call, this.#hasSome(call) ? functionCycles.peek : functionCycles.peekNothing, (port) =>
        port.peek(),
      ),
    read: (call) => {
      const hasSome = this.#hasSome(call);
      if (hasSome) call.surroundings.changed();
      return this.#looked(call, hasSome ? functionCycles.read : functionCycles.readNothing, (port) =>
        port.read(),
      );
    },
    availableForWrite: (call) =>
      this.#looked(call, functionCycles.availableForWrite, (port) => port.availableForWrite()),
    flush: (call) => {
      this.#port(call).flush(call.access);
      return undefined;
    },
    // The overloads for other integers take their lowest byte.
    write: (call) => {
      call.surroundings.changed();
      this.#port(call).write((call.parameters[1] ?? 0) & 0xff, call.access);
      return 1;
    },
    "operator bool": () => 1,
  };

  /** Bytes that wait to be read by `serialEvent` and the like; 0 for a port that was never used. */
  waiting(name: string): number {
    return this.#ports.get(name)?.available() ?? 0;
  }

  #port({ parameters, surroundings }: CoreCall): SerialPort {
    const name = this.#nameOf(parameters[0] ?? 0, surroundings);
    const known = this.#ports.get(name);
    if (known !== undefined) return known;
    const { model, clockHz, handlers, ownVectors, buffers } = this.#setup;
    const usart = model.usarts.find(({ number }) => objectName(number) === name);
    if (usart === undefined)
      return surroundings.refuse(`\`${name}\`: ${model.printedName} has no such USART`);
    if (buffers === undefined)
      return surroundings.refuse(`\`${name}\`: a size of its buffers that is no plain number of 2 or more`);
    const port = new SerialPort(usart, clockHz, buffers);
    for (const [vector, handler] of port.handlers(model)) {
      if (ownVectors.has(vector))
        surroundings.refuse(
          `\`${name}\` beside a handler of your own for ${vector}: the sketch does not link`,
        );
      handlers.set(vector, handler);
    }
    this.#ports.set(name, port);
    return port;
  }

  #hasSome(call: CoreCall): boolean {
    return this.#port(call).available() > 0;
  }

  #looked(call: CoreCall, { before, after }: FunctionCycles, look: (port: SerialPort) => number): number {
    const { access, surroundings } = call;
    const port = this.#port(call);
    access.wait(before);
    surroundings.settle();
    const value = look(port);
    access.wait(after);
    return value;
  }

  #nameOf(self: number, surroundings: Surroundings): string {
    const known = this.#names.get(self);
    if (known !== undefined) return known;
    for (const { number } of this.#setup.model.usarts) {
      const name = objectName(number);
      if (surroundings.addressOf(name) !== self) continue;
      this.#names.set(self, name);
      return name;
    }
    return surroundings.refuse("a HardwareSerial that is not one of the core's own objects");
  }
}

function objectName(number: number): string {
  return `Serial${number === 0 ? "" : number}`;
}
