import type { Wires } from "../../notes/wires.ts";
import type { Program } from "../../reader/program/program.ts";
import type { SetUp } from "../serial/serial-facts.ts";
import type { Walk } from "../walk/events.ts";
import { blockingIn } from "./blocking.ts";
import type { BoardFacts } from "./board-facts.ts";
import type { Clock } from "./clock.ts";
import { brokenConstants } from "./constant-problems.ts";
import { handlersOf, isHandler } from "./handlers.ts";
import { interruptRequests } from "./interrupt-requests.ts";
import { pinRoles } from "./pin-roles.ts";
import { registerStates } from "./register-states.ts";
import { sharedObjects } from "./shared-variables.ts";
import { timerSetUps } from "./timer-set-ups.ts";

export function gatherBoard(
  program: Program,
  wires: Wires,
  walk: Walk,
  clock: Clock | undefined,
  setUps: readonly SetUp[],
): BoardFacts {
  const handlers = handlersOf(walk);
  const starts = walk.entries.filter(({ entry }) => !isHandler(entry)).map(({ entry }) => entry.function);
  const loop = program.functions.filter(({ name, memberOf }) => name === "loop" && memberOf === undefined);
  const sides = {
    handlers: handlers.map((handler) => handler.function),
    program: [...new Set([...starts, ...loop])],
  };
  const registers = once(() => registerStates(walk));
  const timers = once(() => timerSetUps(program.chip, registers()));
  return {
    chip: program.chip,
    clock,
    handlers,
    shared: sharedObjects(program, sides),
    blocking: blockingIn(handlers, clock?.hz),
    interruptRequests: interruptRequests(walk, program.model),
    pinRoles: pinRoles(program.chip, wires, setUps),
    registers,
    timers,
    brokenConstants: brokenConstants(program.units.map((unit) => unit.typed)),
  };
}

/** What hovers alone ask for is gathered when the first of them does. */
function once<Result extends object>(gather: () => Result): () => Result {
  let gathered: Result | undefined;
  return () => {
    gathered ??= gather();
    return gathered;
  };
}
