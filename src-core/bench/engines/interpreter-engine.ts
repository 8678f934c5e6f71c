import type { Machine } from "../../interpreter/machine.ts";
import type { Clock, Outcome, OutsideFunction, Registers, Stop } from "../../interpreter/outcome.ts";
import { vectorNamed } from "../../model/chips.ts";
import type { Program } from "../../reader/program/program.ts";
import { isStandIn, visibleSpan } from "../../reader/tokens.ts";
import type { At, FunctionSymbol, Variable } from "../../reader/typed/nodes.ts";
import type { BenchSide, Engine, EngineEnd } from "../engine.ts";
import { type Looks, looksOf } from "../observing/looks.ts";
import { anything, type Look } from "../observing/pulse.ts";
import type { CodeTrace } from "./code-trace.ts";
import type { FirmwareChip } from "./firmware-chip.ts";
import { FirmwareMachine } from "./firmware-machine.ts";

/** A handler that is no source: it lets its own cycles go by, the response to the interrupt and RETI among them. */
export type HandlerBody = (side: HandlerSide) => Stop | undefined;

export interface HandlerSide {
  readonly chip: FirmwareChip;
  /** Calls what a pointer to a function points to. */
  call(pointer: number): Stop | undefined;
}

/** What the interpreter runs on the bench. */
export interface InterpretedFirmware {
  readonly program: Program;
  readonly chip: FirmwareChip;
  /** Functions of the sketch core and whatever else acts on the chip; tried before the interpreter's own library. */
  readonly outside: OutsideFunction | undefined;
  /** Interrupt handlers beside the author's, by the usual names of their vectors; some come while the code runs. */
  readonly handlers?: ReadonlyMap<string, HandlerBody>;
  /** Told which function and which handler runs when; undefined where nobody wants to know. */
  readonly trace?: CodeTrace | undefined;
  /** Variables that interrupt handlers and other code use: an interrupt may come between their bytes. */
  readonly shared?: readonly Variable[];
  /** Called where one came and changed the variable that the code at a place was reading or writing. */
  readonly torn?: (at: At | undefined) => void;
  /** Runs what comes before `main`'s first statement, and `main` or what stands for it; undefined for a `main` alone. */
  readonly start: ((machine: Machine) => Stop | undefined) | undefined;
  /** See `Clock`. */
  readonly runsEveryTurn?: boolean;
  /** Made with the same `program` and `shared`, without `trace`, for other runs as well; undefined for one of this run's own. */
  readonly machine?: FirmwareMachine | undefined;
}

/** Runs a firmware's sources: registers are those of the chip, and cycles are estimated. */
export class InterpreterEngine implements Engine {
  readonly #firmware: InterpretedFirmware;
  readonly #handlers = new Map<string, FunctionSymbol>();
  #problem: { readonly message: string; readonly at: At | undefined } | undefined;

  /** What happened so far besides what the chip counts. */
  #happened = 0;
  /** SREG when that was asked for last. */
  #status = 0;

  constructor(firmware: InterpretedFirmware) {
    this.#firmware = firmware;
    for (const symbol of firmware.program.functions) {
      if (symbol.vector !== undefined && symbol.definition !== undefined)
        this.#handlers.set(this.#usualName(symbol.vector), symbol);
    }
  }

  #usualName(vector: string): string {
    const { chip } = this.#firmware.program;
    return (chip && vectorNamed(chip, vector)?.names[0]) ?? vector;
  }

  run(bench: BenchSide): EngineEnd {
    const { program, chip, outside, start } = this.#firmware;
    const machine: Machine = this.#machine().beside({
      registers: registersOf(chip, looksOf(program)),
      outside,
      clock: this.#clock(bench, () => machine),
    });
    const reset = machine.reset();
    const stop = reset.kind === "stopped" ? reset.stop : (start ?? this.#main)(machine);
    if (bench.ended) return { kind: "ended" };
    if (this.#problem !== undefined) return { kind: "stopped", ...this.#problem };
    if (stop !== undefined) return { kind: "stopped", message: stop.message, at: stop.at };
    return { kind: "stopped", message: "`main` returned: the code does nothing more", at: undefined };
  }

  #machine(): FirmwareMachine {
    const { program, shared, trace, runsEveryTurn = false, machine } = this.#firmware;
    return machine ?? new FirmwareMachine({ program, shared, calls: trace, runsEveryTurn });
  }

  readonly #main = (machine: Machine): Stop | undefined => {
    const main = this.#firmware.program.functions.find(({ name, memberOf }) => name === "main" && !memberOf);
    if (main === undefined) return { reason: "cannot-run", message: "there is no `main`", at: undefined };
    const outcome = machine.call(main, []);
    return outcome.kind === "stopped" ? outcome.stop : undefined;
  };

  #clock(bench: BenchSide, machine: () => Machine): Clock {
    const { chip, torn } = this.#firmware;
    return {
      ...(torn === undefined ? {} : { torn }),
      budget: () => {
        if (bench.ended || chip.pendingInterrupt() !== undefined) return 0;
        return Math.max(0, chip.due - chip.cycles);
      },
      pass: (cycles, at) => {
        chip.pass(cycles);
        const before = chip.place;
        if (at !== undefined && isAuthors(at)) chip.place = at;
        if (chip.cycles >= chip.due) {
          const { happenings } = chip;
          chip.catchUp();
          // What the code does not see leaves no trace: turns of a waiting loop may be skipped across it.
          if (chip.happenings === happenings && !bench.ended) chip.place = before;
        }
        if (chip.wasReset) return this.#stop("the watchdog reset the chip", chip.place);
        return this.#interrupt(machine, bench) && !bench.ended;
      },
      instructed: (word, at) => {
        if (at !== undefined) chip.place = at;
        if (word === "sleep") this.#happened += 1;
        if (word === "wdr") {
          chip.restartWatchdog();
          return true;
        }
        const never = chip.sleep();
        return never === undefined ? !bench.ended : this.#stop(never.message, at);
      },
      happened: () => {
        if (this.#status !== chip.status) this.#happened += 1;
        this.#status = chip.status;
        return this.#happened + chip.happenings;
      },
    };
  }

  #stop(message: string, at: At | undefined): false {
    this.#problem ??= { message, at };
    return false;
  }

  /** Runs the handlers of all interrupts that are due. False ends the run. */
  #interrupt(machine: () => Machine, bench: BenchSide): boolean {
    const { chip } = this.#firmware;
    for (;;) {
      const vector = chip.pendingInterrupt();
      if (vector === undefined || bench.ended) return true;
      chip.enterInterrupt(vector);
      this.#happened += 1;
      const before = chip.place;
      const handled = this.#handle(vector, machine());
      if (handled === undefined) {
        this.#problem = {
          message: `the interrupt ${vector} has no handler: the chip starts again from its reset`,
          at: chip.place,
        };
        return false;
      }
      if (handled.stop !== undefined) {
        if (!bench.ended) this.#problem ??= { message: handled.stop.message, at: handled.stop.at };
        return false;
      }
      machine().settle();
      chip.leaveInterrupt();
      chip.place = before;
      chip.catchUp();
    }
  }

  /** Runs the handler of a vector, the author's before the core's; undefined where there is none. */
  #handle(vector: string, machine: Machine): { readonly stop: Stop | undefined } | undefined {
    const stopOf = (outcome: Outcome): Stop | undefined =>
      outcome.kind === "stopped" ? outcome.stop : undefined;
    const own = this.#handlers.get(vector);
    // The handler counts the response to the interrupt and RETI, too.
    if (own !== undefined) return { stop: stopOf(machine.call(own, [])) };
    const body = this.#firmware.handlers?.get(vector);
    if (body === undefined) return undefined;
    const call = (pointer: number): Stop | undefined => {
      const stop = stopOf(machine.callPointer(pointer, []));
      if (stop === undefined) machine.settle();
      return stop;
    };
    const { chip, trace } = this.#firmware;
    trace?.interrupted(vector);
    const stop = body({ chip, call });
    trace?.resumed();
    return { stop };
  }
}

/** Places that begin with a macro of a built-in header, and whether it is the author who uses it. */
const withMacros = new WeakMap<At, boolean>();

/** Whether the author wrote what stands there. What a header's function does is done by whoever calls it. */
function isAuthors(at: At): boolean {
  if (!isStandIn(at.first.file)) return true;
  const known = withMacros.get(at);
  if (known !== undefined) return known;
  const found = !isStandIn(visibleSpan(at.first).file);
  withMacros.set(at, found);
  return found;
}

/** 16-bit registers are read from the low byte and written from the high one, as avr-gcc does it. */
function registersOf(chip: FirmwareChip, looks: Looks): Registers {
  /** Where the author's code reads bits that only running tells. */
  const unmasked = new Map<At, Look>();
  const unmaskedAt = (at: At): Look | undefined => {
    if (!isAuthors(at)) return undefined;
    let look = unmasked.get(at);
    if (look === undefined) {
      look = { mask: anything, at };
      unmasked.set(at, look);
    }
    return look;
  };
  return {
    read: (address, bytes, at) => {
      const look = at && (looks.get(at) ?? unmaskedAt(at));
      let value = chip.read(address, look);
      for (let byte = 1; byte < bytes; byte += 1)
        value += chip.read(address + byte, undefined) * 2 ** (8 * byte);
      return value;
    },
    write: (address, value, bytes, at) => {
      if (isAuthors(at)) chip.place = at;
      for (let byte = bytes - 1; byte >= 0; byte -= 1)
        chip.write(address + byte, (value >>> (8 * byte)) & 0xff);
    },
  };
}
