import type { TypedStatement, Variable } from "../../reader/typed/nodes.ts";
import { splitPath } from "./branches.ts";
import { deepestNesting, evaluate, isWhole } from "./expressions.ts";
import { initialize } from "./initializers.ts";
import { forgetWhatIsRepeated } from "./jumps.ts";
import { heldValue } from "./load-store.ts";
import { walkDo, walkFor, walkWhile } from "./loops.ts";
import { placeNamedBy } from "./lvalues.ts";
import type { Machine } from "./machine.ts";
import { beginObject, endObjects, endScope } from "./objects.ts";
import { walkRangeFor } from "./range-loops.ts";
import { walkSwitch } from "./switches.ts";
import { truthOf, unknown } from "./unknowns.ts";
import type { Value } from "./values.ts";

/** Does what a statement does. The path may have ended afterwards. */
export function walkStatement(machine: Machine, statement: TypedStatement): void {
  if (!machine.alive) {
    revive(machine, statement);
    return;
  }
  if (!machine.step() || machine.nesting >= deepestNesting) return;
  machine.nesting += 1;
  const outerObjects = machine.living.length;
  walkNested(machine, statement);
  if (machine.living.length > outerObjects) endScope(machine, statement, outerObjects);
  machine.nesting -= 1;
}

function walkNested(machine: Machine, statement: TypedStatement): void {
  switch (statement.kind) {
    case "block":
      for (const part of statement.statements) walkStatement(machine, part);
      return;
    case "expression":
      evaluate(machine, statement.expression);
      return;
    case "variables":
      for (const variable of statement.variables) declare(machine, variable);
      return;
    case "if":
      walkIf(machine, statement);
      return;
    case "while":
      walkWhile(machine, statement);
      return;
    case "do":
      walkDo(machine, statement);
      return;
    case "for":
      walkFor(machine, statement);
      return;
    case "range-for":
      walkRangeFor(machine, statement);
      return;
    case "switch":
      walkSwitch(machine, statement);
      return;
    case "case":
    case "default":
    case "label":
      if (statement.kind === "label") comeTo(machine, statement);
      if (statement.body !== undefined) walkStatement(machine, statement.body);
      return;
    case "return":
      walkReturn(machine, statement);
      return;
    case "break":
    case "continue":
      leaveLoop(machine, statement);
      return;
    case "goto":
      walkGoto(machine, statement);
      return;
    case "assembly":
      machine.emit({ kind: "assembly", at: statement.at, text: statement.text });
      return;
    case "empty":
      return;
    case "not-understood":
      machine.emit({ kind: "not-followed", at: statement.at, why: "not understood" });
      return;
  }
}

function walkIf(machine: Machine, statement: Extract<TypedStatement, { kind: "if" }>): void {
  if (statement.init !== undefined) walkStatement(machine, statement.init);
  const { otherwise } = statement;
  const condition = evaluate(machine, statement.condition);
  const truth = truthOf(condition);
  if (truth === true) {
    walkStatement(machine, statement.then);
    return;
  }
  if (truth === false) {
    if (otherwise !== undefined) walkStatement(machine, otherwise);
    return;
  }
  splitPath(machine, statement.at, { condition, selector: undefined }, [
    () => walkSide(machine, statement.then),
    () => (otherwise === undefined ? undefined : walkSide(machine, otherwise)),
  ]);
}

function walkSide(machine: Machine, statement: TypedStatement): undefined {
  walkStatement(machine, statement);
}

function declare(machine: Machine, variable: Variable): void {
  if (variable.storage !== "local") return;
  const place = machine.placeOf(variable);
  machine.memory.remake(place, machine.active.length);
  if (variable.initializer !== undefined) initialize(machine, place, variable.initializer);
  else machine.memory.overwrite(place, unknown(undefined));
  beginObject(machine, variable);
}

function walkReturn(machine: Machine, statement: Extract<TypedStatement, { kind: "return" }>): void {
  const value = statement.value && returned(machine, statement.value);
  endObjects(machine, machine.frame?.outerObjects ?? 0);
  if (!machine.alive) return;
  machine.emit({ kind: "leave", at: statement.at, how: "return", value, label: undefined });
  machine.leaveFunction(value, statement);
}

function returned(
  machine: Machine,
  value: Extract<TypedStatement, { kind: "return" }>["value"],
): Value | undefined {
  if (value === undefined) return undefined;
  const returnsReference = machine.frame?.function.type.returns.kind === "reference";
  if (!returnsReference || isWhole(value)) return evaluate(machine, value);
  const place = placeNamedBy(machine, value);
  return place === undefined ? unknown(value) : { kind: "address", place, from: value };
}

function leaveLoop(
  machine: Machine,
  statement: Extract<TypedStatement, { kind: "break" | "continue" }>,
): void {
  let loop = machine.breakable;
  if (statement.kind === "continue")
    while (loop !== undefined && loop.continues === undefined) loop = loop.outer;
  if (loop !== undefined) endObjects(machine, loop.outerObjects);
  if (!machine.alive) return;
  machine.emit({
    kind: "leave",
    at: statement.at,
    how: statement.kind,
    value: undefined,
    label: undefined,
  });
  machine.alive = false;
  const leaving = statement.kind === "break" ? loop?.breaks : loop?.continues;
  if (loop !== undefined) leaving?.push(machine.memory.changesSince(loop.mark));
}

function walkGoto(machine: Machine, statement: Extract<TypedStatement, { kind: "goto" }>): void {
  const { frame } = machine;
  machine.emit({ kind: "leave", at: statement.at, how: "goto", value: undefined, label: statement.name });
  machine.alive = false;
  if (frame === undefined) return;
  frame.gotos ??= new Map();
  const waiting = frame.gotos.get(statement.name) ?? [];
  waiting.push(machine.memory.changesSince(frame.mark));
  frame.gotos.set(statement.name, waiting);
}

function comeTo(machine: Machine, label: Extract<TypedStatement, { kind: "label" }>): void {
  joinGotos(machine, label);
  if (machine.alive) forgetWhatIsRepeated(machine, label);
}

/** Forward jumps come together at their label; backward ones are as if the path ended. */
function joinGotos(machine: Machine, { at, name }: Extract<TypedStatement, { kind: "label" }>): void {
  const { frame } = machine;
  const waiting = frame?.gotos?.get(name);
  if (frame === undefined || waiting === undefined) return;
  frame.gotos?.delete(name);
  machine.emit({ kind: "label", at, name });
  if (machine.alive) waiting.push(machine.memory.changesSince(frame.mark));
  // What the surrounding sides of a branch have written stays on the trail, so the join is written on top.
  machine.continueFrom(waiting, [], (place) => heldValue(machine, place));
}

/** A dead path goes on at a label that a `goto` jumped to. */
function revive(machine: Machine, statement: TypedStatement): void {
  const gotos = machine.frame?.gotos;
  if (gotos === undefined || gotos.size === 0) return;
  if (statement.kind === "block") {
    for (const part of statement.statements) walkStatement(machine, part);
  } else if (statement.kind === "label" && gotos.has(statement.name)) {
    comeTo(machine, statement);
    if (machine.alive && statement.body !== undefined) walkStatement(machine, statement.body);
  }
}
