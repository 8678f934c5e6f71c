import { type ConditionValue, conditionValue, truth } from "./condition-values.ts";

/** Binary operators of `#if` with how tightly they bind; higher binds tighter. */
export const BINARY_PRECEDENCE: Readonly<Record<string, number>> = {
  ...{ "||": 1, "&&": 2, "|": 3, "^": 4, "&": 5 },
  ...{ "==": 6, "!=": 6, "<": 7, ">": 7, "<=": 7, ">=": 7 },
  ...{ "<<": 8, ">>": 8, "+": 9, "-": 9, "*": 10, "/": 10, "%": 10 },
};

/** Words that C++ knows as operators (C++20 [lex.digraph]). */
export const OPERATOR_WORDS: Readonly<Record<string, string>> = {
  ...{ and: "&&", or: "||", not: "!", bitand: "&", bitor: "|", xor: "^", compl: "~", not_eq: "!=" },
};

/** The value of `left operator right`, or what is wrong. `&&` and `||` are not among them. */
export function applyBinary(
  operator: string,
  left: ConditionValue,
  right: ConditionValue,
): ConditionValue | string {
  if (operator === "<<" || operator === ">>") return shift(operator, left, right);
  // The usual arithmetic conversions (C11 6.3.1.8) know two types here: one unsigned makes both so.
  const unsigned = left.unsigned || right.unsigned;
  const a = conditionValue(left.value, unsigned).value;
  const b = conditionValue(right.value, unsigned).value;
  switch (operator) {
    case "|":
      return conditionValue(a | b, unsigned);
    case "^":
      return conditionValue(a ^ b, unsigned);
    case "&":
      return conditionValue(a & b, unsigned);
    case "==":
      return truth(a === b);
    case "!=":
      return truth(a !== b);
    case "<":
      return truth(a < b);
    case ">":
      return truth(a > b);
    case "<=":
      return truth(a <= b);
    case ">=":
      return truth(a >= b);
    case "+":
      return conditionValue(a + b, unsigned);
    case "-":
      return conditionValue(a - b, unsigned);
    case "*":
      return conditionValue(a * b, unsigned);
    case "/":
    case "%":
      if (b === 0n) return "Division by zero in this #if.";
      return conditionValue(operator === "/" ? a / b : a % b, unsigned);
    default:
      return `#if does not know the operator ${operator}.`;
  }
}

/** Shifts keep the type of their left side; a negative count shifts the other way, as compilers do. */
function shift(operator: "<<" | ">>", left: ConditionValue, right: ConditionValue): ConditionValue {
  const isNegative = !right.unsigned && right.value < 0n;
  const count = isNegative ? -right.value : right.value;
  const isLeft = (operator === "<<") !== isNegative;
  if (count >= 64n) {
    return conditionValue(!isLeft && left.value < 0n ? -1n : 0n, left.unsigned);
  }
  return conditionValue(isLeft ? left.value << count : left.value >> count, left.unsigned);
}
