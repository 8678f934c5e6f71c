import { CLOCK_PATTERN } from "../values/clock.ts";
import { PATH_PATTERN } from "../values/operand.ts";
import { SCALE_PATTERN } from "../values/scale.ts";

/** One value of a choice. */
export interface Choice {
  readonly name: string;
  readonly documentation: string;
}

/** What may stand as the value of a key or at a place of a directive. */
export type ValueKind =
  | { readonly kind: "chip" }
  | { readonly kind: "clock" }
  | { readonly kind: "pin" }
  | { readonly kind: "uart" }
  | { readonly kind: "layout"; readonly side: "serial" | "either" }
  | { readonly kind: "line" }
  | { readonly kind: "baud" }
  | { readonly kind: "scale" }
  | { readonly kind: "choice"; readonly choices: readonly Choice[] }
  | { readonly kind: "quantity" }
  | { readonly kind: "rule" }
  | { readonly kind: "reason" }
  | { readonly kind: "counts" }
  | { readonly kind: "buttons" }
  | { readonly kind: "path" }
  | { readonly kind: "operand" };

export interface ValueShape {
  /** With its article, for messages: "a clock with its unit". */
  readonly what: string;
  readonly example: string;
  /** The form every such value has; names are looked up afterwards. Also the pattern of the JSON Schema. */
  readonly pattern: string;
}

/** How each kind of value is written. Names here mean names that only the vocabulary or the code can check. */
export const VALUE_SHAPES: Readonly<Record<ValueKind["kind"], ValueShape>> = {
  chip: { what: "a chip", example: "atmega328p", pattern: "^[A-Za-z0-9_-]+$" },
  clock: { what: "a clock with its unit (Hz, kHz or MHz)", example: "16MHz", pattern: CLOCK_PATTERN },
  pin: {
    what: "a board number or a port bit",
    example: "PD2",
    pattern: "^[A-Za-z]{0,3}[0-9]{1,3}(\\.[0-9]{1,2})?$",
  },
  uart: { what: "the number of a UART", example: "0", pattern: "^[0-9]$" },
  layout: { what: "a report layout", example: "two-button", pattern: "^[a-z0-9]+(-[a-z0-9]+)*$" },
  line: { what: "data bits, parity and stop bits", example: "7N1", pattern: "^[5-9][NEOMS][12]$" },
  baud: { what: "a whole number of baud", example: "1200", pattern: "^[1-9][0-9]{0,6}$" },
  scale: {
    what: "a number or a fraction of whole numbers up to 999",
    example: "1/2",
    pattern: SCALE_PATTERN,
  },
  choice: { what: "one of a few words", example: "internal", pattern: "^[a-z0-9-]+$" },
  quantity: {
    what: "a quantity of the model",
    example: "ps2.request-hold",
    pattern: "^[A-Za-z0-9_-]+(\\.[A-Za-z0-9_-]+)+$",
  },
  rule: {
    what: "a rule",
    example: "ps2/wait-forever",
    pattern: "^[A-Za-z0-9_-]+/[A-Za-z0-9_-]+$",
  },
  reason: { what: "a reason in quotes", example: '"the mouse is always there"', pattern: "\\S" },
  counts: { what: "a whole number of counts", example: "12", pattern: "^[+-]?[0-9]{1,5}$" },
  buttons: { what: "buttons joined by commas", example: "left,right", pattern: "^[a-z0-9]+(,[a-z0-9]+)*$" },
  path: { what: "a name of the code", example: "out", pattern: PATH_PATTERN },
  operand: {
    what: "a name of the code, with `-` before it or a bit number behind it where needed",
    example: "-dy",
    pattern: `^-?${PATH_PATTERN.slice(1, -1)}(\\.([0-9]|[12][0-9]|3[01]))?$`,
  },
};
