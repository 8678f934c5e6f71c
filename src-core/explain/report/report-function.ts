import type { Facts } from "../../facts/facts.ts";
import type { ReportLayout } from "../../model/layouts/layout.ts";
import { layoutNamed } from "../../model/report-layouts.ts";
import type { DecodesNote, EncodesNote } from "../../notes/note.ts";
import type { FunctionSymbol } from "../../reader/typed/nodes.ts";

/** A function that builds a report or takes one apart, as a note says. */
export interface ReportFunction {
  readonly note: EncodesNote | DecodesNote;
  readonly layout: ReportLayout;
  /** Where its body is. */
  readonly function: FunctionSymbol;
}

export function reportFunctions({ notes, program }: Facts): readonly ReportFunction[] {
  return notes.attached.flatMap(({ note, targets }) => {
    if (note.kind !== "encodes" && note.kind !== "decodes") return [];
    const layout = layoutNamed(note.layout.value);
    const [first] = targets;
    if (layout === undefined || first?.target.kind !== "function") return [];
    const symbol = first.target.function;
    return [{ note, layout, function: program.definitionOf(symbol) ?? symbol }];
  });
}
