import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { evaluateAssignment, evaluateCompound, evaluateUpdate } from "./assignments.ts";
import { complement, seenBits } from "./bit-operators.ts";
import { splitPath } from "./branches.ts";
import { evaluateCall, evaluateMethodCall, evaluateUnresolved } from "./calls.ts";
import { initialize } from "./initializers.ts";
import { load } from "./load-store.ts";
import { neighbour, placeNamedBy } from "./lvalues.ts";
import type { Machine } from "./machine.ts";
import { arithmetic, compare, converted, not } from "./operators.ts";
import type { Place } from "./places.ts";
import { walkStatement } from "./statements.ts";
import {
  givenBy,
  integer,
  joinTraces,
  tracesOf,
  truthOf,
  unknown,
  unknownBits,
  unknownOf,
} from "./unknowns.ts";
import { integerOf, type Value } from "./values.ts";

/** Does what an expression does and gives what is known of its value. */
export function evaluate(machine: Machine, expression: TypedExpression): Value {
  if (!machine.step() || machine.nesting >= deepestNesting) return unknownOf(expression.type, expression);
  machine.nesting += 1;
  const value = evaluateNested(machine, expression);
  machine.nesting -= 1;
  return value;
}

/** Deeper nesting, of expressions and of statements in inlined calls together, is not looked into. */
export const deepestNesting = 1200;

function evaluateNested(machine: Machine, expression: TypedExpression): Value {
  switch (expression.kind) {
    case "integer":
      return integer(Number(expression.value), expression);
    case "floating":
      return { kind: "floating", value: expression.value, from: expression };
    case "enumerator": {
      const { value } = expression.enumerator;
      return value === undefined ? unknown(expression) : integer(Number(value), expression);
    }
    case "string":
      return { kind: "address", place: machine.memory.stringPlace(expression), from: expression };
    case "function":
      return { kind: "function", function: expression.function, from: expression };
    case "lambda":
      return evaluateLambda(machine, expression);
    case "this":
      return addressOf(machine.frame?.self, expression);
    case "variable":
    case "member":
    case "dereference":
    case "index":
      return evaluateObject(machine, expression);
    case "address":
      return expression.operand.kind === "function"
        ? evaluate(machine, expression.operand)
        : addressOf(placeNamedBy(machine, expression.operand), expression);
    case "negate":
      return arithmetic(
        "-",
        integer(0, undefined),
        evaluate(machine, expression.operand),
        expression.type,
        expression,
      );
    case "plus":
      return evaluate(machine, expression.operand);
    case "complement":
      return complement(evaluate(machine, expression.operand), expression.type, expression);
    case "not":
      return not(evaluate(machine, expression.operand), expression);
    case "update":
      return evaluateUpdate(machine, expression);
    case "arithmetic": {
      const left = evaluate(machine, expression.left);
      const right = evaluate(machine, expression.right);
      if (expression.operator === "&") maskRead(machine, left, right);
      return arithmetic(expression.operator, left, right, expression.type, expression);
    }
    case "compare":
      return evaluateComparison(machine, expression);
    case "pointer-offset":
      return evaluatePointerOffset(machine, expression);
    case "pointer-difference": {
      evaluate(machine, expression.left);
      evaluate(machine, expression.right);
      return unknownOf(expression.type, expression);
    }
    case "logical":
      return evaluateLogical(machine, expression);
    case "comma":
      evaluate(machine, expression.left);
      return evaluate(machine, expression.right);
    case "assign":
      return evaluateAssignment(machine, expression);
    case "compound-assign":
      return evaluateCompound(machine, expression);
    case "conditional":
      return evaluateConditional(machine, expression);
    case "convert":
      return evaluateConversion(machine, expression);
    case "call":
      return evaluateCall(machine, expression);
    case "method-call":
      return evaluateMethodCall(machine, expression);
    case "construct": {
      const place = machine.memory.temporary(expression.type, machine.active.length);
      initialize(machine, place, expression.initializer);
      return isWhole(expression) ? addressOf(place, expression) : load(machine, place, expression.at);
    }
    case "new": {
      const to = expression.type.kind === "pointer" ? expression.type.to : undefined;
      const place = machine.memory.temporary(to, machine.active.length);
      const { initializer, length } = expression;
      const givesElements = length !== undefined && initializer?.kind === "aggregate";
      if (initializer !== undefined && !givesElements) initialize(machine, place, initializer);
      return addressOf(place, expression);
    }
    case "delete":
    case "next-argument":
      evaluate(machine, expression.operand);
      return unknownOf(expression.type, expression);
    case "further-arguments":
      return unknownOf(expression.type, expression);
    case "statement-value":
      return evaluateStatementValue(machine, expression);
    case "unresolved":
      return evaluateUnresolved(machine, expression);
  }
}

/** `PIND & _BV(3)` looks at one bit. */
function maskRead(machine: Machine, left: Value, right: Value): void {
  const [value, mask] = left.kind === "unknown" ? [left, right] : [right, left];
  if (value.kind !== "unknown" || value.copied === undefined || mask.kind !== "integer") return;
  machine.maskLastRead(value.copied.register, seenBits(value.copied, mask.value));
}

export function addressOf(place: Place | undefined, from: TypedExpression): Value {
  return place === undefined ? unknown(from) : { kind: "address", place, from };
}

/** Objects with parts have no value of their own: their address stands for them. */
export function isWhole(expression: TypedExpression): boolean {
  return expression.type.kind === "array" || expression.type.kind === "record";
}

function evaluateObject(machine: Machine, expression: TypedExpression): Value {
  const place = placeNamedBy(machine, expression);
  if (place === undefined) return unknownOf(expression.type, expression);
  if (isWhole(expression)) return addressOf(place, expression);
  const value = load(machine, place, expression.at);
  // Arguments and table entries keep the expression that gave them; a named constant is its use.
  if (value.from !== undefined && keepsItsSource(value, expression, place)) {
    return value.kind === "integer" && isEntry(place) ? integer(value.value, value.from, true) : value;
  }
  return value.from === expression ? value : givenBy(value, expression);
}

function keepsItsSource(value: Value, expression: TypedExpression, place: Place): boolean {
  if (value.kind === "integer" && value.entry) return true;
  if (expression.kind === "variable" && expression.variable.storage === "parameter") return true;
  return isEntry(place);
}

/** An element of an array, or a member of one: what counts is where the table was written. */
function isEntry(place: Place): boolean {
  return typeof place.key === "number" || typeof place.of?.key === "number";
}

function evaluateComparison(
  machine: Machine,
  expression: Extract<TypedExpression, { kind: "compare" }>,
): Value {
  const left = evaluate(machine, expression.left);
  const right = evaluate(machine, expression.right);
  const outcome = compare(expression.operator, left, right, expression);
  if (outcome.kind === "unknown" && outcome.traces.some((trace) => trace.kind === "time")) {
    const isLeft = tracesOf(left).some((trace) => trace.kind === "time");
    machine.emit({
      kind: "time-test",
      at: expression.at,
      elapsed: isLeft ? left : right,
      limit: isLeft ? right : left,
    });
  }
  return outcome;
}

function evaluatePointerOffset(
  machine: Machine,
  expression: Extract<TypedExpression, { kind: "pointer-offset" }>,
): Value {
  const pointer = evaluate(machine, expression.pointer);
  const offset = integerOf(evaluate(machine, expression.offset));
  if (pointer.kind !== "address" || offset === undefined) return unknown(expression);
  return addressOf(
    neighbour(machine, pointer.place, expression.operator === "+" ? offset : -offset),
    expression,
  );
}

function evaluateLogical(machine: Machine, expression: Extract<TypedExpression, { kind: "logical" }>): Value {
  const left = evaluate(machine, expression.left);
  const truth = truthOf(left);
  const decides = expression.operator === "||";
  if (!decides) machine.operandsOfAnd.set(expression.left, left);
  if (truth === decides) return integer(decides ? 1 : 0, expression);
  const evaluateRight = (): Value => {
    const right = evaluate(machine, expression.right);
    if (!decides) machine.operandsOfAnd.set(expression.right, right);
    return asTruth(right, expression);
  };
  if (truth !== undefined) return evaluateRight();
  const joined = splitPath(machine, expression.at, { condition: left, selector: undefined }, [
    evaluateRight,
    () => integer(decides ? 1 : 0, expression),
  ]);
  if (joined?.kind !== "unknown") return joined ?? unknownOf(expression.type, expression);
  const traces = joinTraces(joined.traces, tracesOf(left));
  return unknownBits(joined.known, joined.ones, joined.from, traces, joined.copied, joined.compared);
}

function asTruth(value: Value, from: TypedExpression): Value {
  const truth = truthOf(value);
  if (truth !== undefined) return integer(truth ? 1 : 0, from);
  if (value.kind !== "unknown") return value;
  return unknownBits(0xfffffffe, 0, from, value.traces, undefined, value.compared);
}

function evaluateConditional(
  machine: Machine,
  expression: Extract<TypedExpression, { kind: "conditional" }>,
): Value {
  const condition = evaluate(machine, expression.condition);
  const truth = truthOf(condition);
  if (truth !== undefined) return evaluate(machine, truth ? expression.then : expression.otherwise);
  const joined = splitPath(machine, expression.at, { condition, selector: undefined }, [
    () => evaluate(machine, expression.then),
    () => evaluate(machine, expression.otherwise),
  ]);
  return joined ?? unknownOf(expression.type, expression);
}

function evaluateConversion(
  machine: Machine,
  expression: Extract<TypedExpression, { kind: "convert" }>,
): Value {
  const { operand, type } = expression;
  if (expression.reason === "decay") {
    if (operand.kind === "function") return evaluate(machine, operand);
    const array = placeNamedBy(machine, operand);
    if (operand.type.kind !== "array") return addressOf(array, expression);
    return addressOf(array && machine.memory.element(array, 0), expression);
  }
  if (isWhole(expression)) return addressOf(placeNamedBy(machine, operand), expression);
  const value = evaluate(machine, operand);
  return type.kind === "void" ? unknown(expression) : converted(value, type);
}

function evaluateLambda(machine: Machine, expression: Extract<TypedExpression, { kind: "lambda" }>): Value {
  for (const capture of expression.captures) {
    const place = machine.placeOf(capture.variable);
    const value = capture.reference
      ? addressOf(placeNamedBy(machine, capture.source), expression)
      : evaluate(machine, capture.source);
    machine.memory.remake(place, machine.active.length);
    machine.memory.write(place, value);
  }
  return { kind: "function", function: expression.function, from: expression };
}

/** `({ ...; value; })`: the value of its last statement. */
function evaluateStatementValue(
  machine: Machine,
  expression: Extract<TypedExpression, { kind: "statement-value" }>,
): Value {
  const { statements } = expression.body;
  const last = statements[statements.length - 1];
  for (const statement of statements) {
    if (!machine.alive) break;
    if (statement === last && statement.kind === "expression") return evaluate(machine, statement.expression);
    walkStatement(machine, statement);
  }
  return unknownOf(expression.type, expression);
}
