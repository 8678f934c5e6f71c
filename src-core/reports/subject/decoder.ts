import type { Machine } from "../../interpreter/machine.ts";
import type { Misstep } from "../../interpreter/outcome.ts";
import type { FieldName, ReportLayout } from "../../model/layouts/layout.ts";
import type { DecodesNote } from "../../notes/note.ts";
import { pathOf } from "../../notes/values/operand.ts";
import type { Program } from "../../reader/program/program.ts";
import type { At, FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { Request } from "../trial-request.ts";
import { BareRegisters } from "./bare-registers.ts";
import { type Cell, readCell } from "./cell.ts";
import type { StoppedCall } from "./encoder-call.ts";
import { NotTried } from "./not-tried.ts";
import { type Bound, boundOperands, fieldValue } from "./operands.ts";
import { Reach } from "./reach.ts";
import { startedMachine } from "./runs.ts";

/** What one call of a decoder gave. */
export type TakenApart =
  | {
      readonly kind: "taken";
      /** In the layout's sense; buttons are 0 or 1. */
      readonly values: ReadonlyMap<FieldName, number>;
      /** What wrote each field last; left out where nothing did. */
      readonly writers: ReadonlyMap<FieldName, At>;
    }
  | StoppedCall;

/** One of the author's decoders, ready to be called; every call finds the firmware as it is after its reset. */
export class Decoder {
  readonly operands: readonly Bound[];
  readonly symbol: FunctionSymbol;
  readonly #machine: Machine;
  readonly #program: Program;
  readonly #registers: BareRegisters;
  readonly #from: Extract<Cell, { kind: "memory" }>;
  readonly #given: readonly (number | bigint)[];
  readonly #restore: () => void;

  /** Throws `NotTried` where what the note names cannot be reached. */
  constructor(request: Request, note: DecodesNote, layout: ReportLayout) {
    const { program, symbol, cancelled } = request;
    this.symbol = symbol;
    this.#program = program;
    this.#registers = new BareRegisters(program.chip);
    this.#machine = startedMachine(program, this.#registers, undefined, cancelled);
    const reach = new Reach(this.#machine, request);
    this.operands = boundOperands(note.fields, layout, reach, program.model);
    for (const { cell, operand } of this.operands) {
      if (cell.kind === "argument")
        throw new NotTried(
          `\`${operand.path.join(".")}\` is passed by value: nothing comes out of it`,
          symbol.at,
        );
    }
    const from = reach.cell(pathOf(note.from.value));
    if (from.kind === "argument")
      throw new NotTried(`\`${note.from.value}\` is one value and not the bytes of a report`, symbol.at);
    this.#from = from;
    this.#given = reach.call().given;
    this.#restore = this.#machine.keep();
  }

  get missteps(): readonly Misstep[] {
    return this.#machine.missteps;
  }

  takeApart(bytes: readonly number[]): TakenApart {
    const { memory } = this.#machine;
    this.#restore();
    this.#registers.clear();
    for (const [index, byte] of bytes.entries()) memory.writeByte(this.#from.address + index, byte);
    const outcome = this.#machine.call(this.symbol, this.#given);
    if (outcome.kind === "stopped") return { ...outcome, asked: this.#registers.asked };
    const values = new Map<FieldName, number>();
    const writers = new Map<FieldName, At>();
    for (const bound of this.operands) {
      const { cell, field } = bound;
      if (cell.kind !== "memory") continue;
      values.set(field, fieldValue(bound, readCell(memory, cell, this.#program.model)));
      const writer = this.#machine.writerOf(cell.address);
      if (writer !== undefined) writers.set(field, writer);
    }
    return { kind: "taken", values, writers };
  }
}
