import type { Chip } from "../../model/chips/chip.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { LoopEvent } from "../walk/events.ts";
import { integerOf, type Trace, type Value } from "../walk/values.ts";
import { LoopLengths, timeLimit } from "./loop-lengths.ts";
import type { WaitLimit } from "./ps2-facts.ts";
import type { LoopItem } from "./sending-paths.ts";
import { pinOfTrace } from "./watched-pins.ts";

/** Tells when loops that wait for something give up. */
export class WaitLimits {
  readonly #chip: Chip | undefined;
  readonly #lengths: LoopLengths;

  constructor(chip: Chip | undefined, clockHz: number | undefined) {
    this.#chip = chip;
    this.#lengths = new LoopLengths(clockHz);
  }

  /** `nothing`: the loop waits for nothing, or its delays are on the path turn by turn. */
  of({ loop, given }: LoopItem): WaitLimit | "unlimited" | "nothing" {
    const byTime = timeOut(loop);
    if (byTime !== undefined) return byTime;
    if (loop.waitsFor.some((trace) => trace.kind === "time")) return "unlimited";
    if (loop.form === "counted") return "nothing";
    const byCount = this.#countedOut(loop, given);
    if (byCount !== undefined) return byCount;
    return loop.waitsFor.some((trace) => comesFromOutside(trace, this.#chip)) ? "unlimited" : "nothing";
  }

  /** So many looks with a delay between them; undefined where nothing tells how long a look takes. */
  ofLooks(loop: LoopEvent): WaitLimit | undefined {
    const { statement, turns } = loop;
    if (turns === undefined) return undefined;
    const condition =
      statement.kind === "for" || statement.kind === "while" ? statement.condition : undefined;
    const count = condition?.kind === "compare" ? condition.right : undefined;
    const at = count?.at ?? { first: statement.at.first, last: statement.at.first };
    return this.#looks(loop, turns, count, visibleRange(at.first, at.last));
  }

  /** A counter with a delay in each turn; what decides is the number of turns, where the function was given it. */
  #countedOut(loop: LoopEvent, given: readonly Value[]): WaitLimit | undefined {
    const turns = loop.turns ?? loop.atMost;
    if (turns === undefined) return undefined;
    // A count that is tested before it is counted down allows one turn more.
    const count = given.find((value) => [turns, turns - 1].includes(integerOf(value) ?? Number.NaN));
    const at = count?.from?.at ?? { first: loop.at.first, last: loop.at.first };
    return this.#looks(loop, integerOf(count) ?? turns, count?.from, visibleRange(at.first, at.last));
  }

  #looks(
    loop: LoopEvent,
    turns: number,
    expression: WaitLimit["expression"],
    span: WaitLimit["span"],
  ): WaitLimit | undefined {
    const turn = this.#lengths.ofTurn(loop);
    if (turn === undefined || turn.us === 0) return undefined;
    return {
      kind: "time-out",
      ms: (turn.us * turns) / 1000,
      looksMs: (this.#lengths.usOf(turn.cycles) * turns) / 1000,
      unitMs: expression && turn.us / 1000,
      expression,
      span,
    };
  }
}

function comesFromOutside(trace: Trace, chip: Chip | undefined): boolean {
  if (trace.kind === "pin") return true;
  if (trace.kind === "register")
    return pinOfTrace(chip, trace) !== undefined || trace.register.name.startsWith("USI");
  return trace.kind === "shared" || trace.kind === "outside-call";
}

function timeOut(loop: LoopEvent): WaitLimit | undefined {
  const found = timeLimit(loop);
  if (found === undefined) return undefined;
  const { from } = found.limit;
  const { first, last } = from?.at ?? found.event.at;
  return {
    kind: "time-out",
    ms: found.us / 1000,
    looksMs: 0,
    unitMs: found.unitUs / 1000,
    expression: from,
    span: visibleRange(first, last),
  };
}
