import { createMachine } from "../../interpreter/create-machine.ts";
import type { Machine } from "../../interpreter/machine.ts";
import type {
  CallWatcher,
  Clock,
  OutsideBody,
  OutsideFunction,
  Registers,
} from "../../interpreter/outcome.ts";
import type { Program } from "../../reader/program/program.ts";
import type { FunctionSymbol, Variable } from "../../reader/typed/nodes.ts";

/** What a machine is for, whatever chip and bench it runs beside. */
export interface MachineSetup {
  readonly program: Program;
  /** See `InterpretedFirmware`. */
  readonly shared: readonly Variable[] | undefined;
  /** This and `runsEveryTurn`: see `Clock`. */
  readonly calls: CallWatcher | undefined;
  readonly runsEveryTurn: boolean;
}

/** The chip and the bench of one run. */
export interface MachineSide {
  readonly registers: Registers;
  readonly clock: Clock;
  /** Knows the same functions in each run. */
  readonly outside: OutsideFunction | undefined;
}

/**
 * The machine of a firmware for one run after the other, so that its code is made once and is warm from the second run on. All
 * functions are lowered at the start: where objects lie does not depend on what an earlier run called first.
 */
export class FirmwareMachine {
  readonly #machine: Machine;
  readonly #bodies = new Map<FunctionSymbol, OutsideBody | undefined>();
  #side: MachineSide | undefined;

  constructor({ program, shared, calls, runsEveryTurn }: MachineSetup) {
    const side = (): MachineSide => {
      if (this.#side === undefined) throw new Error("the machine is beside no chip");
      return this.#side;
    };
    this.#machine = createMachine({
      program,
      limits: { steps: Number.POSITIVE_INFINITY, depth: 200 },
      registers: {
        read: (address, bytes, at) => side().registers.read(address, bytes, at),
        write: (address, value, bytes, at) => side().registers.write(address, value, bytes, at),
      },
      outside: (symbol) => this.#outside(symbol),
      instead: undefined,
      ...(shared && { shared }),
      clock: {
        budget: () => side().clock.budget(),
        pass: (cycles, at) => side().clock.pass(cycles, at),
        instructed: (word, at) => side().clock.instructed?.(word, at) ?? true,
        torn: (at) => side().clock.torn?.(at),
        happened: () => side().clock.happened(),
        ...(calls && { calls }),
        runsEveryTurn,
      },
      cancelled: undefined,
    });
  }

  /** The machine for a run that begins, to be reset; no other run may go on. */
  beside(side: MachineSide): Machine {
    const isFirst = this.#side === undefined;
    this.#side = side;
    this.#bodies.clear();
    if (isFirst) this.#machine.prepare();
    return this.#machine;
  }

  #outside(symbol: FunctionSymbol): OutsideBody | undefined {
    if (this.#bodyOf(symbol) === undefined) return undefined;
    return (parameters, memory, surroundings) => {
      const body = this.#bodyOf(symbol);
      if (body === undefined)
        return surroundings.refuse(`\`${symbol.qualifiedName}\`, which is not there any more`);
      return body(parameters, memory, surroundings);
    };
  }

  #bodyOf(symbol: FunctionSymbol): OutsideBody | undefined {
    let body = this.#bodies.get(symbol);
    if (body === undefined) {
      body = this.#side?.outside?.(symbol);
      this.#bodies.set(symbol, body);
    }
    return body;
  }
}
