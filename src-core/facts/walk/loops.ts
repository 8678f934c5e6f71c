import type { TypedStatement } from "../../reader/typed/nodes.ts";
import { conjuncts, type LoopParts, turnsByCounter, turnsByLeaving } from "./counters.ts";
import { allEffects, directEffects, type Effects } from "./effects.ts";
import type { Event, LoopEvent } from "./events.ts";
import { evaluate } from "./expressions.ts";
import { forgetEffects } from "./forget.ts";
import { heldValue } from "./load-store.ts";
import { loopPlan } from "./loop-plan.ts";
import type { Breakable, Machine } from "./machine.ts";
import type { Changes } from "./memory.ts";
import { walkStatement } from "./statements.ts";
import { truthOf } from "./unknowns.ts";
import type { Value } from "./values.ts";
import { isWaiting, waitsFor } from "./waiting.ts";

/** Turns of a loop that are walked one by one, if they are short; long ones fewer, as `turnSteps` allows. */
export const mostTurns = 128;
const fewestTurns = 24;
/** Turns that are walked of a loop whose counter says that not all of them will be: the last stands for the rest. */
const turnsOfLong = 2;
/** Steps that all turns of one loop together may take. */
const turnSteps = 1500;

export type Of<Kind extends TypedStatement["kind"]> = Extract<TypedStatement, { kind: Kind }>;

export function walkWhile(machine: Machine, statement: Of<"while">): void {
  const { declared, condition, body } = statement;
  walkLoop(machine, { statement, declared, condition, step: undefined, body, tested: "before" });
}

export function walkDo(machine: Machine, statement: Of<"do">): void {
  const { condition, body } = statement;
  walkLoop(machine, { statement, declared: undefined, condition, step: undefined, body, tested: "after" });
}

export function walkFor(machine: Machine, statement: Of<"for">): void {
  const { init, condition, step, body } = statement;
  if (init !== undefined) walkStatement(machine, init);
  walkLoop(machine, { statement, declared: undefined, condition, step, body, tested: "before" });
}

/** One loop being walked. */
export interface Walking {
  readonly parts: LoopParts;
  readonly breakable: Breakable;
  readonly passes: Event[][];
  condition: Value | undefined;
  terms: readonly Value[];
}

function walkLoop(machine: Machine, parts: LoopParts): void {
  const plan = loopPlan(parts);
  if (plan.isBlock) {
    walkStatement(machine, parts.body);
    return;
  }
  const outer = machine.breakable;
  const breakable: Breakable = {
    mark: machine.memory.mark(),
    breaks: [],
    continues: [],
    outerObjects: machine.living.length,
    outer,
  };
  const walking: Walking = { parts, breakable, passes: [], condition: undefined, terms: [] };
  const byCounter = turnsByCounter(machine, parts);
  const byLeaving = turnsByLeaving(machine, parts);
  const atMost = Math.min(byCounter ?? Number.POSITIVE_INFINITY, byLeaving ?? Number.POSITIVE_INFINITY);
  machine.breakable = breakable;
  const most = byCounter !== undefined && byCounter > mostTurns ? turnsOfLong : mostTurns;
  const counted = plan.endless || plan.idle || !plan.counts ? undefined : walkTurns(machine, walking, most);
  let mayBeSkipped = counted === 0;
  if (counted === undefined) {
    mayBeSkipped = parts.tested === "before" && !plan.endless && byCounter === undefined;
    walkOnce(machine, walking, plan.endless, byCounter !== undefined && parts.condition?.kind === "compare");
  }
  machine.breakable = outer;
  goOn(machine, breakable);
  const turns = counted ?? (plan.isOneCondition ? byCounter : undefined);
  emitLoop(machine, walking, plan, {
    turns,
    atMost: Number.isFinite(atMost) ? atMost : undefined,
    mayBeSkipped,
  });
}

export function emitLoop(
  machine: Machine,
  walking: Walking,
  plan: ReturnType<typeof loopPlan>,
  found: {
    readonly turns: number | undefined;
    readonly atMost: number | undefined;
    readonly mayBeSkipped: boolean;
  },
): void {
  const { parts, passes, condition } = walking;
  if (found.turns === 0 && passes.every((events) => events.length === 0)) return;
  const traces = waitsFor(condition, passes);
  const form: LoopEvent["form"] =
    found.turns !== undefined
      ? "counted"
      : isWaiting(traces, passes)
        ? "waiting"
        : plan.endless
          ? "endless"
          : "unknown";
  machine.emit({
    kind: "loop",
    at: parts.statement.at,
    form,
    statement: parts.statement,
    turns: found.turns,
    atMost: found.atMost,
    waitsFor: traces,
    condition,
    terms: walking.terms,
    leaves: plan.leaves,
    idle: plan.idle,
    mayBeSkipped: found.mayBeSkipped,
    passes,
  });
}

/** Goes on behind the loop: from the `break`s, and from its end where that is reached. */
export function goOn(machine: Machine, breakable: Breakable): void {
  if (breakable.breaks.length === 0) return;
  const outcomes: Changes[] = [...breakable.breaks];
  if (machine.alive) outcomes.push(machine.memory.changesSince(breakable.mark));
  machine.memory.undoTo(breakable.mark);
  machine.continueFrom(outcomes, [], (place) => heldValue(machine, place));
}

/**
 * Walks at most `most` turns, one by one, while the condition is known; gives their number. Undefined where the
 * condition was not known, or the turns were too many: then the state is that before the turn that was not walked.
 */
function walkTurns(machine: Machine, walking: Walking, most = mostTurns): number | undefined {
  const { parts, passes } = walking;
  const before = machine.steps;
  let allowed = most;
  for (let turns = 0; ; turns += 1) {
    if (turns === 1) {
      const perTurn = Math.max(1, before - machine.steps);
      allowed = Math.min(most, Math.max(fewestTurns, Math.floor(turnSteps / perTurn)));
    }
    if (turns >= allowed || machine.steps <= 0) return undefined;
    const start = machine.memory.mark();
    const { events, truth } = capturedTurn(machine, walking);
    if (parts.tested === "before" && truth === undefined) {
      machine.memory.undoTo(start);
      return undefined;
    }
    if (events.length > 0) passes.push(events);
    if (!machine.alive) return turns + 1;
    if (truth === false) return parts.tested === "before" ? turns : turns + 1;
    if (truth === undefined) return undefined;
  }
}

function capturedTurn(
  machine: Machine,
  walking: Walking,
): { readonly events: Event[]; readonly truth: boolean | undefined } {
  const isFirst = walking.parts.tested === "before";
  let truth: boolean | undefined = true;
  const events = machine.capture(() => {
    if (isFirst) truth = test(machine, walking);
    if (truth !== true) return;
    walkTurn(machine, walking);
    if (!isFirst && machine.alive) truth = test(machine, walking);
  });
  return { events, truth };
}

function test(machine: Machine, walking: Walking): boolean | undefined {
  const { declared, condition } = walking.parts;
  if (declared !== undefined) walkStatement(machine, declared);
  if (condition === undefined) return true;
  if (condition.kind === "logical" && condition.operator === "&&") {
    machine.operandsOfAnd.clear();
    walking.condition = evaluate(machine, condition);
    walking.terms = conjuncts(condition).flatMap((part) => machine.operandsOfAnd.get(part) ?? []);
  } else {
    walking.condition = evaluate(machine, condition);
    walking.terms = [walking.condition];
  }
  return truthOf(walking.condition);
}

/** The body, what its `continue`s join, and the step. */
export function walkTurn(machine: Machine, { parts, breakable }: Walking): void {
  walkStatement(machine, parts.body);
  const continues = breakable.continues ?? [];
  if (continues.length > 0) {
    const outcomes = continues.splice(0);
    if (machine.alive) outcomes.push(machine.memory.changesSince(breakable.mark));
    machine.memory.undoTo(breakable.mark);
    machine.continueFrom(outcomes, [], (place) => heldValue(machine, place));
  }
  if (machine.alive && parts.step !== undefined) evaluate(machine, parts.step);
}

/**
 * Walks one turn that stands for all: what any turn writes is unknown at its start. Ports keep the state of
 * the first turn, because what they do then is what the author had in mind.
 */
export function walkOnce(
  machine: Machine,
  walking: Walking,
  endless: boolean,
  turnsAtLeastOnce: boolean,
): void {
  const { parts, passes, breakable } = walking;
  const { memory } = machine;
  forgetEffects(machine, loopEffects(machine, parts));
  const exits: Changes[] = [];
  const events = machine.capture(() => {
    if (parts.tested === "before") {
      const truth = test(machine, walking);
      if (!endless && !turnsAtLeastOnce) exits.push(memory.changesSince(breakable.mark));
      if (truth === false && walking.condition?.kind === "integer") return;
    }
    walkTurn(machine, walking);
    if (parts.tested === "after" && machine.alive) test(machine, walking);
  });
  passes.push(events);
  if (machine.alive && !endless) exits.push(memory.changesSince(breakable.mark));
  memory.undoTo(breakable.mark);
  machine.continueFrom(exits, [], (place) => heldValue(machine, place));
}

function loopEffects(machine: Machine, parts: LoopParts): Effects {
  const known = machine.loopEffects.get(parts.statement);
  if (known !== undefined) return known;
  const code = [parts.declared, parts.condition, parts.step, parts.body];
  const direct = code.flatMap((part) => (part === undefined ? [] : [directEffects(part)]));
  const effects = allEffects(direct, machine.linkage);
  machine.loopEffects.set(parts.statement, effects);
  return effects;
}
