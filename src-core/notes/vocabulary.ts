/**
 * The names that notes and edgewise.json may use. Plain data, so that the grammar knows neither the model
 * nor the rules: whoever reads notes hands it over.
 */

export interface Term {
  /** As it is written in a note: `ps2.request-hold`, `two-button`, `ps2/wait-forever`. */
  readonly name: string;
  /** One line for completion lists. */
  readonly title: string;
  /** Markdown for hovers; empty where the title says it all. */
  readonly documentation: string;
}

export interface LayoutTerm extends Term {
  /** The side of the adapter on which reports of this layout travel. */
  readonly side: "serial" | "ps2";
  /** Fields that the layout has, such as `x y left right`. */
  readonly fields: readonly string[];
}

export interface ChipTerm extends Term {
  /** The name as printed on the chip; a note may use it as well. */
  readonly printedName: string;
  /** Board numbers and port bits; empty where the model has no pin table for the chip. */
  readonly pins: readonly Term[];
  /** Numbers of its UARTs; undefined where the model does not know them. */
  readonly uarts: readonly number[] | undefined;
}

export interface Vocabulary {
  readonly chips: readonly ChipTerm[];
  readonly layouts: readonly LayoutTerm[];
  readonly quantities: readonly Term[];
  readonly rules: readonly Term[];
  /** Line formats that a PC understands, the usual one first; others may be written as well. */
  readonly lineFormats: readonly Term[];
  /** What `simulate` of edgewise.json chooses among; a project's own strokes come besides. */
  readonly strokes: readonly Term[];
  readonly mice: readonly Term[];
  readonly pcs: readonly Term[];
  /** Rates that serial mice use, in baud, the usual one first; others may be written as well. */
  readonly bauds: readonly Term[];
}
