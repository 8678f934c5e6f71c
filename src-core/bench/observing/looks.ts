import { evaluate } from "../../reader/constants/evaluate.ts";
import type { Program } from "../../reader/program/program.ts";
import type { At, TypedExpression } from "../../reader/typed/nodes.ts";
import { walkUnit } from "../../reader/typed/walk.ts";
import type { DataModel } from "../../reader/types/types.ts";
import { anything, type Look } from "./pulse.ts";

/** Looks by the place of what is read. */
export type Looks = ReadonlyMap<At, Look>;

const ofPrograms = new WeakMap<Program, Looks>();

/**
 * Which bits the code looks at wherever a constant mask follows at once on something that is read: `PIND & _BV(3)`,
 * `(PIND >> 3) & 1`. Kept with the program, which is run again and again.
 */
export function looksOf(program: Program): Looks {
  const known = ofPrograms.get(program);
  if (known !== undefined) return known;
  const looks = new Map<At, Look>();
  for (const { typed } of program.units) {
    walkUnit(typed, {
      expression: (expression) => {
        if (expression.kind === "arithmetic" && expression.operator === "&") {
          const { left, right } = expression;
          add(looks, left, right, program.model);
          add(looks, right, left, program.model);
        }
        return true;
      },
    });
  }
  ofPrograms.set(program, looks);
  return looks;
}

function add(looks: Map<At, Look>, value: TypedExpression, mask: TypedExpression, model: DataModel): void {
  const read = readIn(value, model);
  if (read === undefined) return;
  const bits = numberOf(mask, model);
  if (bits !== undefined) looks.set(read.at, { mask: (bits << read.shift) & anything, at: read.at });
}

/** What is read, and by how many bits it is moved to the right. */
function readIn(
  expression: TypedExpression,
  model: DataModel,
): { readonly at: At; readonly shift: number } | undefined {
  if (expression.kind === "convert" && !expression.lvalue) return readIn(expression.operand, model);
  if (expression.kind === "arithmetic" && expression.operator === ">>") {
    const by = numberOf(expression.right, model);
    const read = by === undefined ? undefined : readIn(expression.left, model);
    return read && by !== undefined ? { at: read.at, shift: read.shift + by } : undefined;
  }
  return expression.lvalue ? { at: expression.at, shift: 0 } : undefined;
}

function numberOf(expression: TypedExpression, model: DataModel): number | undefined {
  const value = evaluate(expression, model);
  return value.kind === "integer" ? Number(BigInt.asIntN(32, value.value)) : undefined;
}
