import type { Misstep } from "../../interpreter/outcome.ts";
import type { ReportLayout } from "../../model/layouts/layout.ts";
import type { ReportValues } from "../../model/layouts/values.ts";
import type { EncodesNote } from "../../notes/note.ts";
import type { Request } from "../trial-request.ts";
import type { Cell } from "./cell.ts";
import { type Assignment, EncoderCall, type Sent } from "./encoder-call.ts";
import { type Bound, boundOperands, operandValue } from "./operands.ts";

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

  /** The report where registers read as ones, and which these are. */
  sendLit(values: ReportValues): ReturnType<EncoderCall["sendLit"]> {
    return this.#call.sendLit(this.#assignments(values));
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
