import type { Program } from "../../reader/program/program.ts";
import { functionCalled } from "../../reader/typed/function-called.ts";
import type { FunctionDefinition, FunctionSymbol, TypedExpression } from "../../reader/typed/nodes.ts";
import { piecesOf, walkPiece } from "../../reader/typed/walk.ts";
import type { Call } from "./expressions.ts";
import { FunctionFollower } from "./follow-function.ts";
import { heldBy, hull, type Interval } from "./interval.ts";
import type { KnownPlaces } from "./known-places.ts";
import { NotFollowed, type ValueReader } from "./read-values.ts";

/**
 * What the calls in the firmware give for each of these places of a function: parameters, and members behind them. Undefined
 * where nobody calls it, or where it may be called in ways that cannot be seen.
 */
export function givenByCallers(
  program: Program,
  symbol: FunctionSymbol,
  paths: readonly (readonly string[])[],
): readonly (Interval | undefined)[] {
  const callers = symbol.isVirtual ? undefined : callersOf(program, symbol);
  if (callers === undefined) return paths.map(() => undefined);
  const found = new Map<Call, readonly (Interval | undefined)[]>();
  try {
    for (const [caller, calls] of callers) {
      const follower = new FunctionFollower(program, (call, values, known) => {
        if (!calls.has(call)) return;
        const given = paths.map((path) => givenFor(path, call, symbol, values, known));
        const before = found.get(call);
        found.set(
          call,
          before === undefined ? given : given.map((each, index) => either(each, before[index])),
        );
      });
      follower.follow(caller, []);
      if ([...calls].some((call) => !found.has(call))) return paths.map(() => undefined);
    }
  } catch (problem) {
    if (problem instanceof NotFollowed) return paths.map(() => undefined);
    throw problem;
  }
  const all = [...found.values()];
  return paths.map((_, index) => all.map((each) => each[index]).reduce(either));
}

function either(one: Interval | undefined, other: Interval | undefined): Interval | undefined {
  return one === undefined || other === undefined ? undefined : hull(one, other);
}

function givenFor(
  [root = "", ...members]: readonly string[],
  call: Call,
  { parameterNames, type }: FunctionSymbol,
  values: ValueReader,
  known: KnownPlaces,
): Interval | undefined {
  const index = parameterNames.indexOf(root);
  const argument = call.arguments[index];
  const parameter = type.parameters[index];
  if (argument === undefined || parameter === undefined) return undefined;
  if (members.length === 0)
    return parameter.kind === "integer" ? heldBy(values.value(argument, known), parameter) : undefined;
  const object = values.names.placeOf(argument);
  return object && known.get({ ...object, key: [object.key, ...members].join(".") });
}

/** The functions that call it, with their calls; undefined where not every call is one by name in a function. */
function callersOf(
  program: Program,
  symbol: FunctionSymbol,
): ReadonlyMap<FunctionDefinition, ReadonlySet<Call>> | undefined {
  const callers = new Map<FunctionDefinition, Set<Call>>();
  const meant = program.definitionOf(symbol) ?? symbol;
  const isIt = (other: FunctionSymbol | undefined): boolean =>
    other !== undefined && (program.definitionOf(other) ?? other) === meant;
  let isSeen = true;
  for (const { typed } of program.units) {
    for (const piece of piecesOf(typed)) {
      const callees = new Set<TypedExpression>();
      walkPiece(piece, {
        expression(expression) {
          if (expression.kind === "function" && isIt(expression.function) && !callees.has(expression))
            isSeen = false;
          if (expression.kind !== "call" && expression.kind !== "method-call") return true;
          if (expression.kind === "call") callees.add(expression.callee);
          if (!isIt(functionCalled(expression))) return true;
          if ("kind" in piece) isSeen = false;
          else callers.set(piece, (callers.get(piece) ?? new Set()).add(expression));
          return true;
        },
      });
    }
  }
  return isSeen && callers.size > 0 ? callers : undefined;
}
