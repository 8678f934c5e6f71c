import type { Machine } from "../../interpreter/machine.ts";
import type { Misstep, Stop } from "../../interpreter/outcome.ts";
import type { ReportLayout } from "../../model/layouts/layout.ts";
import type { ReportValues } from "../../model/layouts/values.ts";
import type { EncodesNote } from "../../notes/note.ts";
import type { Program } from "../../reader/program/program.ts";
import type { FunctionSymbol, TypedUnit } from "../../reader/typed/nodes.ts";
import type { Request } from "../trial-request.ts";
import { writeCell } from "./cell.ts";
import { NotTried } from "./not-tried.ts";
import { type Bound, boundOperands, operandValue } from "./operands.ts";
import { type GivenCall, Reach } from "./reach.ts";
import { startedMachine } from "./runs.ts";
import { type ByteWritten, FunctionSink, objectSink, type Sink } from "./sink.ts";

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

/** One of the author's encoders, ready to be called; every call finds the firmware as it is after its reset. */
export class Encoder {
  readonly operands: readonly Bound[];
  readonly symbol: FunctionSymbol;
  readonly #machine: Machine;
  readonly #sink: Sink;
  readonly #program: Program;
  readonly #call: GivenCall;
  readonly #restore: () => void;

  /** Throws `NotTried` where what the note names cannot be reached. */
  constructor({ program, unit, symbol, cancelled }: Request, note: EncodesNote, layout: ReportLayout) {
    this.symbol = symbol;
    this.#program = program;
    const path = note.into.value.split(/\.|->/);
    const target = targetFunction(path, symbol, unit, program);
    const { model } = program;
    const sink = target && new FunctionSink(model);
    const body = target && sink?.bodyFor(target);
    this.#machine = startedMachine(program, (each) => (each === target ? body : undefined), cancelled);
    if (sink !== undefined) sink.writerOf = (address) => this.#machine.writerOf(address);
    const reach = new Reach(this.#machine, symbol, unit);
    this.operands = boundOperands(note.fields, layout, reach, model);
    this.#sink = sink ?? objectSink(this.#machine, reach.cell(path), layout.bytes.length);
    this.#call = reach.call();
    this.#restore = this.#machine.keep();
  }

  /** Undefined behaviour met so far. */
  get missteps(): readonly Misstep[] {
    return this.#machine.missteps;
  }

  send(values: ReportValues): Sent {
    const { model } = this.#program;
    this.#restore();
    const given = [...this.#call.given];
    const sums = new Map<string, { readonly bound: Bound; sum: number }>();
    for (const bound of this.operands) {
      const key = bound.operand.path.join(".");
      const sum = operandValue(bound, values);
      const known = sums.get(key);
      if (known === undefined) sums.set(key, { bound, sum });
      else known.sum += sum;
    }
    for (const { bound, sum } of sums.values()) {
      const { cell } = bound;
      if (cell.kind === "argument") given[this.#call.first + cell.index] = sum;
      else writeCell(this.#machine.memory, cell, sum, model);
    }
    this.#sink.empty();
    const outcome = this.#machine.call(this.symbol, given);
    if (outcome.kind === "stopped") return outcome;
    const { value } = outcome;
    const counts = typeof value === "number" && !(this.#sink instanceof FunctionSink);
    return { kind: "sent", ...this.#sink.taken(), returned: counts ? value : undefined };
  }
}

/** The function that `into` names, unless it names a parameter, member or object of that name. */
function targetFunction(
  [root, ...members]: readonly string[],
  symbol: FunctionSymbol,
  unit: TypedUnit,
  program: Program,
): FunctionSymbol | undefined {
  if (root === undefined || members.length > 0 || symbol.parameterNames.includes(root)) return undefined;
  if (unit.variables.some(({ name, qualifiedName }) => name === root || qualifiedName === root))
    return undefined;
  const named = unit.functions.filter(({ name, qualifiedName }) => name === root || qualifiedName === root);
  const own = named.find(({ memberOf }) => memberOf !== undefined && memberOf === symbol.memberOf);
  const target = own ?? named[0];
  if (target === undefined) return undefined;
  const meant = program.definitionOf(target) ?? target;
  if (meant.type.parameters.length === 0)
    throw new NotTried(`\`${root}\` takes no byte that could be looked at`, meant.at);
  return meant;
}
