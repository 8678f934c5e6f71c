import { visibleRange } from "../tokens.ts";
import { KeptResults } from "../typed/kept-results.ts";
import type { TypedExpression, TypedUnit } from "../typed/nodes.ts";
import {
  type PieceOfCode,
  piecesOf,
  type Visitor,
  walkExpression,
  walkPiece,
  walkStatement,
} from "../typed/walk.ts";
import type { DataModel } from "../types/types.ts";
import { evaluator } from "./evaluate.ts";
import type { ConstantProblem } from "./problems.ts";
import { truth } from "./value.ts";

/**
 * What goes wrong in the constants of a unit's own code: initialisers and bodies of functions. Branches that a
 * constant condition closes are not looked at, as `F_CPU > 8000000 ? ... : ...` relies on. In reading order.
 */
export function constantProblems(unit: TypedUnit): readonly ConstantProblem[] {
  return distinct([...piecesOf(unit)].flatMap((piece) => problemsIn(unit, piece)));
}

const kept = new KeptResults<PieceOfCode, readonly ConstantProblem[]>();

function problemsIn({ lasting, model }: TypedUnit, piece: PieceOfCode): readonly ConstantProblem[] {
  return kept.get(lasting, piece, () => {
    const found: ConstantProblem[] = [];
    walkPiece(piece, problemVisitor(model, found));
    return found;
  });
}

/** Instances of a template and default arguments are typed several times in one place. */
function distinct(problems: readonly ConstantProblem[]): readonly ConstantProblem[] {
  if (problems.length < 2) return problems;
  const byPlace = new Map<string, ConstantProblem>();
  for (const problem of problems) {
    const { first, last } = problem.expression.at;
    const { file, start, end } = visibleRange(first, last);
    const key = `${file}:${start}:${end}:${first.start}:${problem.kind}:${problem.meant}`;
    if (!byPlace.has(key)) byPlace.set(key, problem);
  }
  return [...byPlace.values()];
}

type Evaluate = ReturnType<typeof evaluator>;

function problemVisitor(model: DataModel, found: ConstantProblem[]): Visitor {
  const evaluate = evaluator(model);
  const visitor: Visitor = {
    expression(expression) {
      const problem = mayGoWrong(expression) ? evaluate(expression).problem : undefined;
      if (problem !== undefined) found.push(problem);
      const open = openOperands(expression, evaluate);
      if (open === undefined) return true;
      for (const operand of open) walkExpression(operand, visitor);
      return false;
    },
    statement(statement) {
      if (statement.kind !== "if") return true;
      const taken = truth(evaluate(statement.condition).value);
      if (taken === undefined) return true;
      walkExpression(statement.condition, visitor);
      const branch = taken ? statement.then : statement.otherwise;
      if (branch !== undefined) walkStatement(branch, visitor);
      return false;
    },
  };
  return visitor;
}

/** What is computed here: names, objects and calls give what they give. */
function mayGoWrong(expression: TypedExpression): boolean {
  switch (expression.kind) {
    case "convert":
      return expression.reason !== "explicit";
    case "arithmetic":
    case "negate":
    case "plus":
    case "complement":
    case "not":
    case "compare":
    case "logical":
    case "comma":
    case "construct":
      return true;
    default:
      return false;
  }
}

/** The operands that are evaluated, where a constant decides between them; undefined for all of them. */
function openOperands(
  expression: TypedExpression,
  evaluate: Evaluate,
): readonly TypedExpression[] | undefined {
  if (expression.kind === "conditional") {
    const taken = truth(evaluate(expression.condition).value);
    if (taken === undefined) return undefined;
    return [expression.condition, taken ? expression.then : expression.otherwise];
  }
  if (expression.kind !== "logical") return undefined;
  const left = truth(evaluate(expression.left).value);
  const decides = expression.operator === "&&" ? left === false : left === true;
  return decides ? [expression.left] : undefined;
}
