import type { Machine } from "../../interpreter/machine.ts";
import type { Misstep, Stop } from "../../interpreter/outcome.ts";
import type { ReportLayout } from "../../model/layouts/layout.ts";
import type { ReportValues } from "../../model/layouts/values.ts";
import type { EncodesNote } from "../../notes/note.ts";
import type { Program } from "../../reader/program/program.ts";
import type { FunctionSymbol, TypedUnit } from "../../reader/typed/nodes.ts";
import type { RecordDeclaration } from "../../reader/types/types.ts";
import type { Request } from "../trial-request.ts";
import { type Cell, writeCell } from "./cell.ts";
import { NotTried } from "./not-tried.ts";
import { type Bound, boundOperands, operandValue } from "./operands.ts";
import { type GivenCall, Reach } from "./reach.ts";
import { startedMachine } from "./runs.ts";
import { type ByteWritten, FunctionSink, objectSink, type Sink } from "./sink.ts";
import { isWrittenElsewhere } from "./written-elsewhere.ts";

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
  | { readonly kind: "stopped"; readonly stop: Stop };

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
  readonly #sink: Sink;
  readonly #call: GivenCall;
  readonly #restore: () => void;

  /** `into` is a path as notes write it. Throws `NotTried` where it cannot be reached. */
  constructor(request: Request, into: string, bytes: number) {
    const { program, unit, symbol, cancelled } = request;
    this.#request = request;
    const path = pathOf(into);
    const targets = targetFunctions(path, symbol, unit, program);
    const sink = targets.size === 0 ? undefined : new FunctionSink(program.model);
    this.#machine = startedMachine(
      program,
      (each) => (targets.has(each) ? sink?.bodyFor(each) : undefined),
      cancelled,
    );
    if (sink !== undefined) sink.writerOf = (address) => this.#machine.writerOf(address);
    this.reach = new Reach(this.#machine, symbol, unit);
    this.#call = this.reach.call();
    this.#sink = sink ?? objectSink(this.#machine, this.reach.cell(path), bytes);
    const array = this.reach.global(path[0] ?? "");
    this.ownsItsBytes =
      sink === undefined && array !== undefined && !isWrittenElsewhere(program, array, symbol);
    this.#restore = this.#machine.keep();
  }

  /** Undefined behaviour met so far. */
  get missteps(): readonly Misstep[] {
    return this.#machine.missteps;
  }

  /** `left` are bytes that an earlier report left where this one is built. */
  send(assignments: Iterable<Assignment>, left: readonly number[] = []): Sent {
    this.#restore();
    this.#sink.hold(left);
    return this.sendOn(assignments);
  }

  /** The same, with the firmware as the call before left it. */
  sendOn(assignments: Iterable<Assignment>): Sent {
    const { symbol, program } = this.#request;
    const given = [...this.#call.given];
    for (const { cell, value } of assignments) {
      if (cell.kind === "argument") given[this.#call.first + cell.index] = value;
      else writeCell(this.#machine.memory, cell, value, program.model);
    }
    this.#sink.empty();
    const outcome = this.#machine.call(symbol, given);
    if (outcome.kind === "stopped") return outcome;
    const { value } = outcome;
    const counts = typeof value === "number" && !(this.#sink instanceof FunctionSink);
    return { kind: "sent", ...this.#sink.taken(), returned: counts ? value : undefined };
  }
}

/** One of the author's encoders with the operands of its note. */
export class Encoder {
  readonly operands: readonly Bound[];
  readonly #call: EncoderCall;

  /** Throws `NotTried` where what the note names cannot be reached. */
  constructor(request: Request, note: EncodesNote, layout: ReportLayout) {
    this.#call = new EncoderCall(request, note.into.value, layout.bytes.length);
    this.operands = boundOperands(note.fields, layout, this.#call.reach, request.program.model);
  }

  get missteps(): readonly Misstep[] {
    return this.#call.missteps;
  }

  get ownsItsBytes(): boolean {
    return this.#call.ownsItsBytes;
  }

  send(values: ReportValues): Sent {
    return this.#call.send(this.#assignments(values));
  }

  /**
   * The report behind another: `on` as the firmware goes on, `over` with nothing left of the other but its bytes. Where
   * the other report cannot be sent, both say so.
   */
  sendAfter(before: ReportValues, values: ReportValues): { readonly on: Sent; readonly over: Sent } {
    const first = this.send(before);
    if (first.kind === "stopped") return { on: first, over: first };
    const on = this.#call.sendOn(this.#assignments(values));
    return { on, over: this.#call.send(this.#assignments(values), first.bytes) };
  }

  #assignments(values: ReportValues): Iterable<Assignment> {
    const sums = new Map<string, { readonly cell: Cell; value: number }>();
    for (const bound of this.operands) {
      const key = bound.operand.path.join(".");
      const value = operandValue(bound, values);
      const known = sums.get(key);
      if (known === undefined) sums.set(key, { cell: bound.cell, value });
      else known.value += value;
    }
    return sums.values();
  }
}

function pathOf(words: string): readonly string[] {
  return words.split(/\.|->/);
}

/**
 * The functions that `into` names: one, or those of a class that have the name. Nothing where it names a parameter, a
 * member or an object.
 */
function targetFunctions(
  path: readonly string[],
  symbol: FunctionSymbol,
  unit: TypedUnit,
  program: Program,
): ReadonlySet<FunctionSymbol> {
  const named = functionsNamed(path, symbol, unit).map((each) => program.definitionOf(each) ?? each);
  const takesNothing = named.find(({ type }) => type.parameters.length === 0);
  if (takesNothing !== undefined && named.length === 1)
    throw new NotTried(`\`${path.join(".")}\` takes no byte that could be looked at`, takesNothing.at);
  return new Set(named);
}

function functionsNamed(
  [root = "", ...members]: readonly string[],
  symbol: FunctionSymbol,
  unit: TypedUnit,
): readonly FunctionSymbol[] {
  if (symbol.parameterNames.includes(root)) return [];
  const object = unit.variables.find(({ name, qualifiedName }) => name === root || qualifiedName === root);
  const [method, ...further] = members;
  if (object !== undefined) {
    if (method === undefined || further.length > 0 || object.type.kind !== "record") return [];
    return methodsNamed(method, object.type.record, unit);
  }
  if (members.length > 0) return [];
  const own = symbol.memberOf === undefined ? [] : methodsNamed(root, symbol.memberOf, unit);
  if (own.length > 0) return own;
  const named = unit.functions.find(({ name, qualifiedName }) => name === root || qualifiedName === root);
  return named === undefined ? [] : [named];
}

/** Member functions by name, those of base classes too. */
function methodsNamed(method: string, record: RecordDeclaration, unit: TypedUnit): readonly FunctionSymbol[] {
  const own = unit.classes.get(record)?.functions.filter(({ name }) => name === method) ?? [];
  return [...own, ...record.bases.flatMap((base) => methodsNamed(method, base.record, unit))];
}
