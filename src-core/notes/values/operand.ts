/**
 * What stands on the right of `field=` in encodes and decodes: a parameter, member or global, turned over
 * with `-`, or one bit of it with `.0` to `.31`.
 */
export interface Operand {
  /** `-`: it grows the other way than the layout's field. */
  readonly negated: boolean;
  /** See `pathOf`. */
  readonly path: readonly string[];
  /** Bit number, 0 the lowest; undefined for the whole value. */
  readonly bit: number | undefined;
}

const NAME = "[A-Za-z_][A-Za-z0-9_]*";
const PATH = `${NAME}(?:::${NAME})*(?:(?:\\.|->)${NAME})*`;

/** Names from the outermost inwards: `out.dx` and `out->dx` are both `["out", "dx"]`. */
export function pathOf(text: string): readonly string[] {
  return text.split(/\.|->/);
}

/** A path alone, as `into out` and `from buf` take it. */
export const PATH_PATTERN = `^${PATH}$`;

const OPERAND = new RegExp(`^(-?)(${PATH})(?:\\.([0-9]|[12][0-9]|3[01]))?$`);

export function parseOperand(text: string): Operand | undefined {
  const parts = OPERAND.exec(text);
  if (parts === null) return undefined;
  const [, sign, path = "", bit] = parts;
  return {
    negated: sign === "-",
    path: pathOf(path),
    bit: bit === undefined ? undefined : Number(bit),
  };
}
