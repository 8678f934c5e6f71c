import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { walkExpression } from "../../reader/typed/walk.ts";
import { sizeOf } from "../../reader/types/layout.ts";
import type { FunctionScope } from "./scope.ts";

/** What decides in which order the arguments of a call are evaluated. */
export interface CallOrder {
  /** The arguments, the object of a member function among them. */
  readonly given: readonly TypedExpression[];
  /** They stand in braces: from left to right (C++11 8.5.4p4). */
  readonly braces: boolean;
}

/**
 * JavaScript for a call. The language leaves the order of the arguments open; avr-gcc evaluates them from the last to
 * the first, and so does this where it can be told. `arguments-first`: the function is found with what they leave.
 */
export function inCallOrder(
  scope: FunctionScope,
  target: string,
  parameters: readonly string[],
  { given, braces }: CallOrder,
  when: "function-first" | "arguments-first" = "function-first",
): string {
  const movable = parameters.filter((code) => !isFixed(code));
  const isTold = !braces && movable.length > 1 && given.some(hasEffects);
  if (!isTold && when === "function-first") return `${target}(${parameters.join(",")})`;
  const steps: string[] = [];
  const ready = parameters.map((code) => {
    if (isFixed(code)) return code;
    const name = scope.temporary();
    steps.push(`${name}=${code}`);
    return name;
  });
  if (isTold) steps.reverse();
  return `(${[...steps, `${target}(${ready.join(",")})`].join(",")})`;
}

/** Numbers, names and places in the frame: nothing that another argument does changes them. */
function isFixed(code: string): boolean {
  return /^\(*-?[\w.]+n?(\+\d+)?\)*$/.test(code);
}

const turning: ReadonlySet<string> = new Set(["+", "*", "&", "|", "^", "<", ">", "<=", ">=", "==", "!="]);

/**
 * Whether avr-gcc evaluates the right operand first: it turns operators around that can be, where that leaves a plain
 * variable on the right.
 */
export function isTurned(
  scope: FunctionScope,
  operator: string,
  left: TypedExpression,
  right: TypedExpression,
): boolean {
  return turning.has(operator) && isVariable(scope, left) && !isVariable(scope, right) && hasEffects(right);
}

/** Conversions that keep the size are none to the compiler. */
function isVariable(scope: FunctionScope, expression: TypedExpression): boolean {
  if (expression.kind === "variable") return expression.variable.type.kind !== "reference";
  if (expression.kind !== "convert") return false;
  const { model } = scope.linkage;
  return (
    expression.type.kind !== "floating" &&
    expression.operand.type.kind !== "floating" &&
    sizeOf(expression.type, model) === sizeOf(expression.operand.type, model) &&
    isVariable(scope, expression.operand)
  );
}

/** Whether evaluating it can change what another expression gives. */
export function hasEffects(expression: TypedExpression): boolean {
  let found = false;
  walkExpression(expression, {
    expression: ({ kind }) => {
      found ||= effective.has(kind);
      return !found && kind !== "lambda";
    },
    statement: () => !found,
  });
  return found;
}

const effective: ReadonlySet<TypedExpression["kind"]> = new Set([
  ...(["call", "method-call", "construct", "new", "delete", "statement-value"] as const),
  ...(["assign", "compound-assign", "update", "unresolved"] as const),
]);
