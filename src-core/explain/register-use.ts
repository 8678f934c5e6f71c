import type { Span } from "../finding.ts";
import type { Register } from "../model/chips/chip.ts";
import { registerAt } from "../model/chips.ts";
import { addressOf } from "../reader/constants/address.ts";
import { evaluate } from "../reader/constants/evaluate.ts";
import { visibleRange } from "../reader/tokens.ts";
import type { ArithmeticOperator, TypedExpression } from "../reader/typed/nodes.ts";
import { around, written } from "./around.ts";
import { holds } from "./explanation.ts";
import type { Place } from "./place.ts";

/** A constant that a register is given, or that picks bits out of one. */
export interface RegisterUse {
  readonly register: Register;
  /** `=`, `|=`, ...; `&` where bits are read. */
  readonly operator: "=" | `${ArithmeticOperator}=` | "&";
  /** The bits of the constant that the register has. */
  readonly value: number;
  /** The constant, or the whole where the place lies beside it. */
  readonly span: Span;
}

/** The register of the chip that an expression names. */
export function registerOf({ facts }: Place, expression: TypedExpression): Register | undefined {
  const { chip } = facts.board;
  if (chip?.kind !== "avr" || !expression.lvalue || expression.type.kind !== "integer") return undefined;
  const address = addressOf(expression, facts.program.model);
  return address === undefined ? undefined : registerAt(chip, address, expression.type.bits === 16 ? 16 : 8);
}

/** The innermost use of a register around a place whose constant is known. */
export function registerUse(place: Place): RegisterUse | undefined {
  for (const { expression, span } of around(place).toReversed()) {
    const parts = partsOf(place, expression);
    if (parts === undefined) continue;
    const value = evaluate(parts.constant, place.facts.program.model);
    if (value.kind !== "integer") return undefined;
    const { first, last } = parts.constant.at;
    const { file, start, end } = visibleRange(first, last);
    const isIn = holds({ file, start, end }, place.file, place.offset);
    return {
      register: parts.register,
      operator: parts.operator,
      value: Number(BigInt.asUintN(parts.register.width, value.value)),
      span: isIn ? { file, start, end } : span,
    };
  }
  return undefined;
}

interface Parts extends Pick<RegisterUse, "register" | "operator"> {
  readonly constant: TypedExpression;
}

function partsOf(place: Place, expression: TypedExpression): Parts | undefined {
  switch (expression.kind) {
    case "assign":
    case "compound-assign": {
      const register = registerOf(place, expression.target);
      const operator = expression.kind === "assign" ? "=" : (`${expression.operator}=` as const);
      return register && { register, operator, constant: expression.value };
    }
    case "arithmetic": {
      if (expression.operator !== "&") return undefined;
      const left = registerOf(place, written(expression.left));
      if (left !== undefined) return { register: left, operator: "&", constant: expression.right };
      const right = registerOf(place, written(expression.right));
      return right && { register: right, operator: "&", constant: expression.left };
    }
    default:
      return undefined;
  }
}
