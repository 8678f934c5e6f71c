import type { At, FunctionDefinition, FunctionSymbol, TypedExpression } from "../../reader/typed/nodes.ts";
import type { Type } from "../../reader/types/types.ts";
import { copyObject, forgetPointee } from "./assignments.ts";
import { contentsOf } from "./contents.ts";
import { allEffects, functionEffects } from "./effects.ts";
import type { NotFollowed, OutsideCall } from "./events.ts";
import { forgetEffects } from "./forget.ts";
import { constructMembers } from "./initializers.ts";
import { heldValue, store } from "./load-store.ts";
import type { Frame, Machine } from "./machine.ts";
import type { Place } from "./places.ts";
import { takeOver, walkAndRemember } from "./repeatable-calls.ts";
import { walkStatement } from "./statements.ts";
import { joinTraces, joinValues, unknownBits, unknownOf } from "./unknowns.ts";
import type { Trace, Value } from "./values.ts";

/** Calls deeper than this are not gone into. */
const deepest = 24;

/** What is called, with what, from where. */
export interface Calling {
  readonly at: At;
  readonly type: Type;
  readonly expressions: readonly TypedExpression[];
  readonly arguments: readonly Value[];
  readonly object: Place | undefined;
}

/** Goes into a function whose body is known, or notes the call of one whose body is not. */
export function callFunction(
  machine: Machine,
  symbol: FunctionSymbol,
  calling: Calling,
  name: string,
): Value {
  const definition = machine.linkage.definitionOf(symbol);
  if (definition === undefined) {
    const call: OutsideCall = {
      kind: "outside-call",
      at: calling.at,
      name,
      function: symbol,
      origin: symbol.standIn ? "core" : "declared",
      object: calling.object && { kind: "address", place: calling.object, from: undefined },
      arguments: calling.arguments,
      expressions: calling.expressions,
      contents: contentsOf(machine, calling.arguments),
    };
    return callOutside(machine, call, calling.type, undefined);
  }
  const defining = machine.linkage.definingSymbol(symbol);
  const obstacle = whyNotInto(machine, defining);
  if (obstacle !== undefined) {
    machine.memory.spoilRecordings();
    machine.emit(notFollowed(calling.at, obstacle));
    forgetEffects(machine, allEffects([functionEffects(defining, machine.linkage)], machine.linkage));
    return unknownOf(calling.type, undefined);
  }
  return goInto(machine, defining, definition, calling);
}

function whyNotInto(machine: Machine, symbol: FunctionSymbol): NotFollowed["why"] | undefined {
  if (machine.active.includes(symbol)) return "recursion";
  if (machine.active.length >= deepest) return "too deep";
  return machine.step() ? undefined : "too long";
}

export function notFollowed(at: At, why: NotFollowed["why"]): NotFollowed {
  return { kind: "not-followed", at, why };
}

export function callOutside(
  machine: Machine,
  call: OutsideCall,
  type: Type,
  from: TypedExpression | undefined,
): Value {
  machine.emit(call);
  const known = machine.hardware.called(call, machine);
  if (known !== undefined) return known;
  for (const argument of call.arguments) forgetPointee(machine, argument);
  return unknownOf(type, from, [{ kind: "outside-call", name: call.name }]);
}

function goInto(
  machine: Machine,
  symbol: FunctionSymbol,
  definition: FunctionDefinition,
  calling: Calling,
): Value {
  const { events, result } =
    takeOver(machine, symbol, calling) ??
    walkAndRemember(machine, symbol, calling, () => walkBody(machine, symbol, definition, calling));
  machine.emit({
    kind: "call",
    at: calling.at,
    function: symbol,
    arguments: calling.arguments,
    expressions: calling.expressions,
    object: calling.object && { kind: "address", place: calling.object, from: undefined },
    events,
    result,
  });
  return result ?? unknownOf(calling.type, undefined);
}

/** Walks a function with its parameters bound; gives what it returns. Dead afterwards where no path returns. */
export function walkBody(
  machine: Machine,
  symbol: FunctionSymbol,
  definition: FunctionDefinition,
  calling: Pick<Calling, "arguments" | "object">,
): Value | undefined {
  machine.reached.add(symbol);
  machine.active.push(symbol);
  bindParameters(machine, definition, calling.arguments);
  const outer = { frame: machine.frame, breakable: machine.breakable };
  const frame: Frame = {
    function: symbol,
    outerObjects: machine.living.length,
    self: calling.object,
    mark: machine.memory.mark(),
    returns: [],
    end: definition.body.kind === "block" ? definition.body.statements.at(-1) : undefined,
    onlyReturn: undefined,
    traces: [],
    gotos: undefined,
  };
  machine.frame = frame;
  machine.breakable = undefined;
  if (symbol.special === "constructor") constructMembers(machine, symbol, definition, calling.object);
  walkStatement(machine, definition.body);
  if (machine.alive) machine.leaveFunction(undefined, undefined);
  machine.frame = outer.frame;
  machine.breakable = outer.breakable;
  machine.active.pop();
  return joinReturns(machine, frame);
}

function joinReturns(machine: Machine, frame: Frame): Value | undefined {
  const { returns, onlyReturn, traces } = frame;
  if (onlyReturn !== undefined) {
    machine.alive = true;
    return onlyReturn.value;
  }
  machine.memory.undoTo(frame.mark);
  machine.continueFrom(
    returns.map(({ changes }) => changes),
    traces,
    (place) => heldValue(machine, place),
  );
  if (returns.length > 1) machine.decided(traces);
  let joined: Value | undefined;
  for (const { value } of returns) {
    if (value === undefined) continue;
    joined = joined === undefined ? value : joinValues(joined, value, traces);
  }
  return joined?.kind === "unknown" ? withTraces(joined, traces, returns.length) : joined;
}

function withTraces(
  value: Extract<Value, { kind: "unknown" }>,
  traces: readonly Trace[],
  returns: number,
): Value {
  if (returns < 2) return value;
  const all = joinTraces(value.traces, traces);
  return unknownBits(value.known, value.ones, value.from, all, value.copied, value.compared);
}

function bindParameters(machine: Machine, definition: FunctionDefinition, given: readonly Value[]): void {
  for (const [index, parameter] of definition.parameters.entries()) {
    const place = machine.placeOf(parameter);
    machine.memory.remake(place, machine.active.length);
    const value =
      given[index] ?? unknownOf(parameter.type, undefined, [{ kind: "parameter", variable: parameter }]);
    if (parameter.type.kind === "record") copyObject(machine, value, place);
    else if (parameter.type.kind === "reference") machine.memory.write(place, value);
    else store(machine, place, value, parameter.at);
  }
}
