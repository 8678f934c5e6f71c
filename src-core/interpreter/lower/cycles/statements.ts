import type { TypedExpression, TypedInitializer, TypedStatement } from "../../../reader/typed/nodes.ts";
import { expressionsOf, walkStatement } from "../../../reader/typed/walk.ts";
import { cyclesOfLines } from "../instruction-names.ts";
import { cost } from "./costs.ts";
import type { ExpressionCosts } from "./expressions.ts";

/** What a statement itself takes, without the statements in it; of a loop what is done once, the last test included. */
export function statementCycles(statement: TypedStatement, costs: ExpressionCosts): number {
  switch (statement.kind) {
    case "expression":
      return whole(costs.effect(statement.expression));
    case "variables":
      return whole(
        statement.variables.reduce(
          (sum, { initializer, storage }) =>
            storage !== "local" || initializer === undefined ? sum : sum + initialCycles(initializer, costs),
          0,
        ),
      );
    case "if":
      return whole(
        costs.condition(statement.condition) + (statement.otherwise === undefined ? 0 : cost.jump / 2),
      );
    case "switch":
      return whole(costs.value(statement.condition, 1) + choiceCycles(statement.body));
    case "while":
      return Math.floor(costs.condition(statement.condition));
    case "for":
      if (statement.step?.kind === "update") costs.countsWith(statement.step.operand);
      // One that surely begins is tested behind its turns only.
      return statement.condition === undefined || hasConstantBound(statement.condition, costs)
        ? 0
        : Math.floor(costs.condition(statement.condition));
    case "return":
      return statement.value === undefined ? 0 : whole(costs.value(statement.value));
    case "break":
    case "continue":
    case "goto":
      return cost.jump / 2;
    case "assembly":
      return cyclesOfLines(statement.text);
    default:
      return 0;
  }
}

/** What one turn of a loop takes besides its body. */
export function turnCycles(statement: TypedStatement, costs: ExpressionCosts): number {
  switch (statement.kind) {
    case "while": {
      // What does nothing but wait jumps back over its test; else the test is in front, and a jump behind.
      const back = isEmpty(statement.body) ? cost.taken : cost.jump - cost.taken;
      return whole(costs.condition(statement.condition) + back);
    }
    case "do":
      return whole(costs.condition(statement.condition) + cost.taken);
    case "for": {
      if (onlyCounts(statement, costs)) return cost.countedTurn;
      const test = statement.condition === undefined ? cost.jump : costs.condition(statement.condition);
      const step = statement.step === undefined ? 0 : costs.effect(statement.step);
      const isSure = statement.condition === undefined || hasConstantBound(statement.condition, costs);
      return whole(test + step + (isSure ? cost.taken : cost.jump - cost.taken));
    }
    default:
      return cost.jump;
  }
}

/** Half a cycle is rounded to even, so that halves do not add up to one side. */
function whole(cycles: number): number {
  const below = Math.floor(cycles);
  const rest = cycles - below;
  return rest === 0.5 ? below + (below % 2) : Math.round(cycles);
}

/** `for (i = 0; i < 8; i++)` whose body does not look at `i`: it is counted down to zero instead. */
function onlyCounts(
  { condition, step, body }: Extract<TypedStatement, { kind: "for" }>,
  costs: ExpressionCosts,
): boolean {
  if (condition === undefined || step?.kind !== "update" || step.operand.kind !== "variable") return false;
  const { variable } = step.operand;
  let isNamed = !hasConstantBound(condition, costs);
  walkStatement(body, {
    expression: (expression) => {
      isNamed ||= expression.kind === "variable" && expression.variable === variable;
      return !isNamed;
    },
  });
  return !isNamed;
}

function isEmpty(body: TypedStatement): boolean {
  return body.kind === "empty" || (body.kind === "block" && body.statements.every(isEmpty));
}

function initialCycles(initializer: TypedInitializer, costs: ExpressionCosts): number {
  if (initializer.kind === "value") return costs.value(initializer.value);
  const given = expressionsOf(initializer).reduce(
    (sum, each) => sum + costs.value(each) + cost.memoryByte * costs.widths.bytesOf(each.type),
    0,
  );
  return given;
}

function hasConstantBound(condition: TypedExpression, { widths }: ExpressionCosts): boolean {
  return condition.kind === "compare" && widths.isConstant(condition.right);
}

/** Comparisons one after the other, or halving what is left; a table where there are many. */
function choiceCycles(body: TypedStatement): number {
  const labels = labelsIn(body);
  if (labels >= 8) return cost.tableJump;
  return (labels <= 4 ? labels / 2 + 0.5 : Math.log2(labels) + 0.5) * (1 + cost.branch);
}

function labelsIn(body: TypedStatement): number {
  let labels = 0;
  const statements = body.kind === "block" ? body.statements : [body];
  for (let inner of statements) {
    while (inner.kind === "case" || inner.kind === "default") {
      if (inner.kind === "case") labels += 1;
      if (inner.body === undefined) break;
      inner = inner.body;
    }
  }
  return labels;
}
