import { requirement, sourceOf } from "../../explain/bounds.ts";
import { formatRange, type Quantity } from "../../model/quantities.ts";
import { escaped, table } from "../markdown/markdown.ts";

/** Quantities with their figures and where these stand. */
export function quantityTable(quantities: readonly Quantity[]): string {
  return table(["quantity", "figure", "what it is", "where it stands"], quantities.map(rowOf));
}

function rowOf(of: Quantity): readonly string[] {
  const figure = formatRange(of);
  const usual = of.typical !== undefined && !figure.startsWith("about") ? `; usually ${of.typical}` : "";
  return [
    `\`${of.id}\` ${escaped(of.title)}`,
    requirement(of) === "" ? "" : `${figure}${usual}`,
    escaped(of.meaning),
    escaped(sourceOf(of)).replace(/^Source: /, ""),
  ];
}
