import type { Machine } from "../../interpreter/machine.ts";
import type { Misstep, Stop } from "../../interpreter/outcome.ts";
import { pathOf } from "../../notes/values/operand.ts";
import type { Request } from "../trial-request.ts";
import { BareRegisters } from "./bare-registers.ts";
import { type Cell, writeCell } from "./cell.ts";
import { functionBehind, handedFunction } from "./handed-function.ts";
import { type GivenCall, Reach } from "./reach.ts";
import { startedMachine } from "./runs.ts";
import { type ByteWritten, FunctionSink, objectSink, type Sink } from "./sink.ts";
import { targetFunctions } from "./target-functions.ts";
import { isWrittenElsewhere } from "./written-elsewhere.ts";

/** A call that did not end by itself. */
export interface StoppedCall {
  readonly kind: "stopped";
  readonly stop: Stop;
  /** Registers that it read, see `BareRegisters`. */
  readonly asked: readonly string[];
}

/** What one call of an encoder gave. */
export type Sent =
  | {
      readonly kind: "sent";
      readonly bytes: readonly number[];
      /** Every value that a byte was given, in order. */
      readonly written: readonly ByteWritten[];
      /** Undefined for what is no number, and where the bytes were sent as they came. */
      readonly returned: number | undefined;
    }
  | StoppedCall;

/** A place and the whole number that is put there before a call. */
export interface Assignment {
  readonly cell: Cell;
  readonly value: number;
}

/** A function that builds a report, ready to be called; every call finds the firmware as it is after its reset. */
export class EncoderCall {
  readonly reach: Reach;
  /** The report is built in a global that nobody else clears in between. */
  readonly ownsItsBytes: boolean;
  readonly #request: Request;
  readonly #machine: Machine;
  readonly #registers: BareRegisters;
  readonly #sink: Sink;
  readonly #call: GivenCall;
  readonly #restore: () => void;
  /** A pointer through which the encoder calls for each byte, where it is handed one. */
  #handed: Assignment | undefined;

  /** `into` is a path as notes write it. Throws `NotTried` where it cannot be reached. */
  constructor(request: Request, into: string, bytes: number) {
    const { program, unit, symbol, cancelled } = request;
    this.#request = request;
    const path = pathOf(into);
    const targets = new Set(targetFunctions(path, symbol, unit, program));
    const sink = new FunctionSink(program.model);
    this.#registers = new BareRegisters(program.chip);
    this.#machine = startedMachine(
      program,
      this.#registers,
      (each) => (targets.has(each) ? sink.bodyFor(each) : undefined),
      cancelled,
    );
    sink.writerOf = (address) => this.#machine.writerOf(address);
    this.reach = new Reach(this.#machine, request);
    this.#call = this.reach.call();
    const cell = targets.size > 0 ? undefined : this.reach.cell(path);
    const called = cell && functionBehind(cell.type);
    if (cell !== undefined && called !== undefined) {
      const handed = handedFunction(into, called, symbol);
      targets.add(handed);
      this.#handed = { cell, value: this.#machine.pointerTo(handed) };
    }
    const isBuilt = cell !== undefined && called === undefined;
    this.#sink = isBuilt ? objectSink(this.#machine, cell, bytes) : sink;
    const array = this.reach.global(path[0] ?? "");
    this.ownsItsBytes = isBuilt && array !== undefined && !isWrittenElsewhere(program, array, symbol);
    this.#restore = this.#machine.keep();
  }

  /** Undefined behaviour met so far. */
  get missteps(): readonly Misstep[] {
    return this.#machine.missteps;
  }

  /** `left` are bytes that an earlier report left where this one is built. */
  send(assignments: Iterable<Assignment>, left: readonly number[] = []): Sent {
    this.#restore();
    this.#registers.clear();
    this.#sink.hold(left);
    return this.sendOn(assignments);
  }

  /** The same with every bit of the registers set that the function reads without having written it, and their names. */
  sendLit(assignments: Iterable<Assignment>): { readonly sent: Sent; readonly asked: readonly string[] } {
    this.#registers.idle = 1;
    const sent = this.send(assignments);
    this.#registers.idle = 0;
    return { sent, asked: this.#registers.asked };
  }

  /** The same, with the firmware as the call before left it. */
  sendOn(assignments: Iterable<Assignment>): Sent {
    const { symbol, program } = this.#request;
    const given = [...this.#call.given];
    for (const { cell, value } of this.#handed === undefined ? assignments : [...assignments, this.#handed]) {
      if (cell.kind === "argument") given[this.#call.first + cell.index] = value;
      else writeCell(this.#machine.memory, cell, value, program.model);
    }
    this.#sink.empty();
    const outcome = this.#machine.call(symbol, given);
    if (outcome.kind === "stopped") return { ...outcome, asked: this.#registers.asked };
    const { value } = outcome;
    const counts = typeof value === "number" && !(this.#sink instanceof FunctionSink);
    return { kind: "sent", ...this.#sink.taken(), returned: counts ? value : undefined };
  }
}
