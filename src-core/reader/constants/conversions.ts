import type { TypedExpression } from "../typed/nodes.ts";
import { signedOf, unsignedOf } from "../types/basic-types.ts";
import { fits, integerTypeOf } from "../types/conversions.ts";
import type { DataModel, IntegerType } from "../types/types.ts";
import { evaluateIn, type Run } from "./evaluate.ts";
import { addressValue, plain } from "./expressions.ts";
import type { ConstantProblem, Evaluation } from "./problems.ts";
import { convertValue, type Value } from "./value.ts";

type Conversion = Extract<TypedExpression, { kind: "convert" }>;

/** The value of a conversion, and what an implicit one loses. */
export function evaluateConversion(run: Run, expression: Conversion): Evaluation<Value> {
  const { operand, type } = expression;
  if (expression.reason === "decay" || (expression.reason === "base" && !expression.lvalue)) {
    if (operand.type.kind === "array" || operand.type.kind === "function") {
      return plain(addressValue(run, operand, type));
    }
  }
  const from = evaluateIn(run, operand);
  const value = convertValue(from.value, type);
  if (value.kind === "unknown" || from.spoilt || expression.reason === "explicit") {
    return plain(value, from.spoilt);
  }
  return withLoss(run.model, expression, from, value);
}

function withLoss(
  model: DataModel,
  expression: Conversion,
  from: Evaluation<Value>,
  value: Value,
): Evaluation<Value> {
  const target = integerTypeOf(expression.type);
  if (target === undefined || value.kind !== "integer" || target.rank === "bool") return plain(value);
  const given = integerOf(from.value);
  if (given === undefined) return plain(value);
  const exact = from.exact ?? given;
  if (exact === value.value) return plain(value);
  const problem = lossAt(model, expression, exact, given, value.value, target);
  return { value, problem, spoilt: problem !== undefined, exact: from.exact };
}

function integerOf(value: Value): bigint | undefined {
  if (value.kind === "integer") return value.value;
  if (value.kind !== "floating" || !Number.isFinite(value.value)) return undefined;
  return BigInt(Math.trunc(value.value));
}

/**
 * What is lost at a conversion: bits, where the value fits neither the signed nor the unsigned type of that
 * width; a sign, where one that only a shift made is widened. -1 to an unsigned type is no loss.
 */
function lossAt(
  model: DataModel,
  expression: Conversion,
  exact: bigint,
  given: bigint,
  got: bigint,
  target: IntegerType,
): ConstantProblem | undefined {
  const fitsSome = fits(given, signedOf(target, model)) || fits(given, unsignedOf(target, model));
  if (!fitsSome) return { kind: "conversion", expression, meant: exact, got, type: target };
  const source = integerTypeOf(expression.operand.type);
  const widens = source !== undefined && source.bits < target.bits && exact !== given;
  return widens ? { kind: "sign", expression, meant: exact, got, type: target } : undefined;
}
