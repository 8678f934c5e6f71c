import type { Span } from "../../finding.ts";
import { evaluate } from "../../reader/constants/evaluate.ts";
import { type Token, visibleRange } from "../../reader/tokens.ts";
import type { FunctionSymbol, TypedExpression } from "../../reader/typed/nodes.ts";
import { walkExpression } from "../../reader/typed/walk.ts";
import { withoutConversions } from "../../reader/typed/without-conversions.ts";
import type { DataModel } from "../../reader/types/types.ts";
import type { OutsideCall, Walk } from "../walk/events.ts";
import { eachOnce } from "../walk/in-order.ts";
import { integerOf, type Value } from "../walk/values.ts";
import { namedCallOf } from "./calls.ts";
import { macrosOf } from "./interrupts-off.ts";

/** An interrupt that the firmware wants to have handled. */
export type InterruptRequest =
  | {
      readonly kind: "attached";
      /** The pin, or what stands for the interrupt. */
      readonly span: Span;
      /** `pin`: by `digitalPinToInterrupt`; `number`: the core's own number of the interrupt. */
      readonly by: "pin" | "number";
      /** Undefined for a pin whose number is not known here, though it is none with an interrupt. */
      readonly value: number | undefined;
      /** A constant by this name, which is also used as a pin's number elsewhere. */
      readonly alsoPin: string | undefined;
    }
  | { readonly kind: "vector"; readonly name: string; readonly span: Span };

export function interruptRequests(walk: Walk, model: DataModel): readonly InterruptRequest[] {
  const calls = walk.entries.flatMap(({ events }) =>
    eachOnce(events).filter((event) => event.kind === "outside-call"),
  );
  const pinNames = namesOfPins(calls);
  const requests: InterruptRequest[] = [];
  for (const { entry } of walk.entries) {
    if (entry.vector !== undefined) requests.push(vectorRequest(entry.function, entry.vector));
  }
  for (const call of calls) {
    const request = call.name === "attachInterrupt" ? attachRequest(call, pinNames, model) : undefined;
    if (request !== undefined) requests.push(request);
  }
  return requests;
}

function vectorRequest({ at }: FunctionSymbol, name: string): InterruptRequest {
  return { kind: "vector", name, span: visibleRange(at.first, at.last) };
}

function attachRequest(
  call: OutsideCall,
  pinNames: ReadonlySet<string>,
  model: DataModel,
): InterruptRequest | undefined {
  const [which] = call.arguments;
  const [expression] = call.expressions;
  if (which === undefined || expression === undefined) return undefined;
  const number = integerOf(which);
  const pin = pinAskedFor(expression);
  if (pin !== undefined) {
    const lacking = lackingPin(which);
    if (lacking === undefined && !isNoInterrupt(number)) return undefined;
    const at = (lacking?.from ?? pin).at;
    const span = argumentSpan(at.first) ?? visibleRange(at.first, at.last);
    const value = integerOf(lacking) ?? constantOf(pin, model);
    return { kind: "attached", span, by: "pin", value, alsoPin: undefined };
  }
  if (number === undefined) return undefined;
  const at = (which.from ?? expression).at;
  const name = nameOf(which.from ?? expression);
  const alsoPin = name !== undefined && pinNames.has(name) ? name : undefined;
  return { kind: "attached", span: visibleRange(at.first, at.last), by: "number", value: number, alsoPin };
}

const CONVERSION = "digitalPinToInterrupt";

/** What the core gives for a pin without an interrupt: -1, as a byte where it takes a byte. */
function isNoInterrupt(number: number | undefined): boolean {
  return number === -1 || number === 0xff;
}

/** The pin of which nothing is known but that the core was asked for its interrupt. */
function lackingPin(which: Value): Value | undefined {
  if (which.kind !== "unknown") return undefined;
  return which.traces.find((trace) => trace.kind === "interrupt-of")?.pin;
}

/** The pin that `digitalPinToInterrupt` is asked about: its argument, or what its macro compares first. */
function pinAskedFor(expression: TypedExpression): TypedExpression | undefined {
  let found: TypedExpression | undefined;
  walkExpression(expression, {
    expression(inner) {
      if (namedCallOf(inner)?.name === CONVERSION) found ??= namedCallOf(inner)?.arguments[0];
      else if (inner.kind === "compare" && comesFromConversion(inner)) {
        found ??= withoutConversions(inner.left);
      }
      return found === undefined;
    },
  });
  return found;
}

/** The operator, or the second number, stands in the macro's body; the argument stands where it was written. */
function comesFromConversion({ at: { first, last } }: TypedExpression): boolean {
  return [...macrosOf(first), ...macrosOf(last)].includes(CONVERSION);
}

/** What stands between the brackets of the macro's call, where the call stands in a file itself. */
function argumentSpan({ macro }: Token): Span | undefined {
  if (macro?.name !== CONVERSION || macro.within !== undefined) return undefined;
  const { file, start, end } = macro.call;
  return { file, start: start + CONVERSION.length + 1, end: end - 1 };
}

function constantOf(expression: TypedExpression, model: DataModel): number | undefined {
  const value = evaluate(expression, model);
  return value.kind === "integer" ? Number(value.value) : undefined;
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
