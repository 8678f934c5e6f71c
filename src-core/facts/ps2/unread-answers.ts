import { acknowledge, resendRequest } from "../../model/replies.ts";
import { evaluate } from "../../reader/constants/evaluate.ts";
import type { Program } from "../../reader/program/program.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { FunctionSymbol, TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { expressionsOf, walkStatement } from "../../reader/typed/walk.ts";
import type { Linkage } from "../walk/linkage.ts";
import type { UnreadAnswer } from "./ps2-facts.ts";
import type { PathItem } from "./sending-paths.ts";

const answers: ReadonlySet<bigint> = new Set([acknowledge, resendRequest].map(({ code }) => BigInt(code)));

/**
 * Senders whose bytes the mouse answers to nobody: nothing in the project compares anything with FA or FE, nor hands such a
 * value to a function that may. Senders of a library may look themselves, and so may functions whose body is not there.
 */
export function unreadAnswers(
  program: Program,
  paths: readonly (readonly PathItem[])[],
  linkage: Linkage,
): UnreadAnswer[] {
  const sends = paths.flatMap((path) => path.filter((item) => item.kind === "send"));
  const own = sends.filter(({ sender }) => sender.by === "what it does");
  if (own.length === 0 || own.length < sends.length) return [];
  if (paths.some((path) => path.some(({ kind }) => kind === "unknown"))) return [];
  if (comparesAnswers(program, linkage)) return [];
  const found = new Map<FunctionSymbol | undefined, UnreadAnswer>();
  for (const { event, sender } of own) {
    if (found.has(sender.function)) continue;
    found.set(sender.function, { span: visibleRange(event.at.first, event.at.last) });
  }
  return [...found.values()];
}

function comparesAnswers(program: Program, linkage: Linkage): boolean {
  const isAnswer = (expression: TypedExpression): boolean => {
    if (expression.kind === "variable" && expression.type.kind === "array") {
      const { initializer } = linkage.canonical(expression.variable);
      return initializer !== undefined && expressionsOf(initializer).some(isAnswer);
    }
    const value = evaluate(expression, program.model);
    return value.kind === "integer" && answers.has(BigInt.asUintN(8, value.value));
  };
  return program.functions.some((symbol) => {
    const body = linkage.definitionOf(symbol)?.body;
    return body !== undefined && looksIn(body, isAnswer, linkage);
  });
}

function looksIn(
  body: TypedStatement,
  isAnswer: (expression: TypedExpression) => boolean,
  linkage: Linkage,
): boolean {
  let found = false;
  walkStatement(body, {
    statement(statement) {
      if (statement.kind === "case" && isAnswer(statement.value)) found = true;
      return !found;
    },
    expression(expression) {
      if (looks(expression, isAnswer, linkage)) found = true;
      return !found;
    },
  });
  return found;
}

function looks(
  expression: TypedExpression,
  isAnswer: (expression: TypedExpression) => boolean,
  linkage: Linkage,
): boolean {
  switch (expression.kind) {
    case "compare":
      return isAnswer(expression.left) || isAnswer(expression.right);
    case "arithmetic":
      return (
        (expression.operator === "-" || expression.operator === "^") &&
        (isAnswer(expression.left) || isAnswer(expression.right))
      );
    case "index":
      return isAnswer(expression.array.kind === "convert" ? expression.array.operand : expression.array);
    case "call":
      return (
        expression.callee.kind === "function" &&
        isOfProject(expression.callee.function, linkage) &&
        expression.arguments.some(isAnswer)
      );
    case "method-call":
      return isOfProject(expression.method, linkage) && expression.arguments.some(isAnswer);
    default:
      return false;
  }
}

function isOfProject(symbol: FunctionSymbol, linkage: Linkage): boolean {
  return !symbol.standIn && linkage.definitionOf(symbol) !== undefined;
}
