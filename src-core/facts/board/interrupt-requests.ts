import type { Span } from "../../finding.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { FunctionSymbol, TypedExpression } from "../../reader/typed/nodes.ts";
import { walkExpression } from "../../reader/typed/walk.ts";
import type { OutsideCall, Walk } from "../walk/events.ts";
import { inOrder } from "../walk/in-order.ts";
import { integerOf } from "../walk/values.ts";
import { callOf, namedCallOf } from "./calls.ts";
import { macrosOf } from "./interrupts-off.ts";

/** An interrupt that the firmware wants to have handled. */
export type InterruptRequest =
  | {
      readonly kind: "attached";
      /** The pin, or what stands for the interrupt. */
      readonly span: Span;
      /** `pin`: by `digitalPinToInterrupt`; `number`: the core's own number of the interrupt. */
      readonly by: "pin" | "number";
      readonly value: number;
      /** A constant by this name, which is also used as a pin's number elsewhere. */
      readonly alsoPin: string | undefined;
    }
  | { readonly kind: "vector"; readonly name: string; readonly span: Span };

export function interruptRequests(walk: Walk): readonly InterruptRequest[] {
  const calls = walk.entries.flatMap(({ events }) =>
    [...inOrder(events)].filter((event) => event.kind === "outside-call"),
  );
  const pinNames = namesOfPins(calls);
  const requests: InterruptRequest[] = [];
  for (const { entry } of walk.entries) {
    if (entry.vector !== undefined) requests.push(vectorRequest(entry.function, entry.vector));
  }
  for (const call of calls) {
    const request = call.name === "attachInterrupt" ? attachRequest(call, pinNames) : undefined;
    if (request !== undefined) requests.push(request);
  }
  return requests;
}

function vectorRequest({ at }: FunctionSymbol, name: string): InterruptRequest {
  return { kind: "vector", name, span: visibleRange(at.first, at.last) };
}

function attachRequest(call: OutsideCall, pinNames: ReadonlySet<string>): InterruptRequest | undefined {
  const [which] = call.arguments;
  const [expression] = call.expressions;
  if (which === undefined || expression === undefined) return undefined;
  const at = (which.from ?? pinExpression(expression) ?? expression).at;
  const span = visibleRange(at.first, at.last);
  const conversion = conversionIn(expression);
  const lacking =
    which.kind === "unknown" ? which.traces.find((trace) => trace.kind === "interrupt-of") : undefined;
  if (lacking !== undefined) {
    const value = integerOf(lacking.pin);
    return value === undefined ? undefined : { kind: "attached", span, by: "pin", value, alsoPin: undefined };
  }
  const value = integerOf(which);
  if (value === undefined || conversion) return undefined;
  const name = nameOf(which.from ?? expression);
  const alsoPin = name !== undefined && pinNames.has(name) ? name : undefined;
  return { kind: "attached", span, by: "number", value, alsoPin };
}

/** Whether the argument asks the core for the interrupt of a pin. */
function conversionIn(expression: TypedExpression): boolean {
  return pinExpression(expression) !== undefined || [...macrosOf(expression.at.first)].includes(CONVERSION);
}

const CONVERSION = "digitalPinToInterrupt";

/** The argument of `digitalPinToInterrupt`. */
function pinExpression(expression: TypedExpression): TypedExpression | undefined {
  let found: TypedExpression | undefined;
  walkExpression(expression, {
    expression(inner) {
      const call = callOf(inner) ?? namedCallOf(inner);
      const name = call && ("name" in call ? call.name : call.callee.name);
      if (name === CONVERSION) found ??= call?.arguments[0];
      return found === undefined;
    },
  });
  return found;
}

const PIN_FUNCTIONS: ReadonlySet<string> = new Set(["pinMode", "digitalRead", "digitalWrite"]);

/** Constants that the firmware uses as numbers of pins. */
function namesOfPins(calls: readonly OutsideCall[]): ReadonlySet<string> {
  const names = new Set<string>();
  for (const call of calls) {
    if (!PIN_FUNCTIONS.has(call.name)) continue;
    const name = nameOf(call.arguments[0]?.from ?? call.expressions[0]);
    if (name !== undefined) names.add(name);
  }
  return names;
}

/** The variable, enumerator or macro that an expression is a use of. */
function nameOf(expression: TypedExpression | undefined): string | undefined {
  if (expression === undefined) return undefined;
  const macro = [...macrosOf(expression.at.first)].at(-1);
  if (macro !== undefined) return macro;
  switch (expression.kind) {
    case "variable":
      return expression.variable.name;
    case "enumerator":
      return expression.enumerator.name;
    case "convert":
      return nameOf(expression.operand);
    default:
      return undefined;
  }
}
