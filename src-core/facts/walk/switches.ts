import type { TypedStatement } from "../../reader/typed/nodes.ts";
import { integerTypeOf } from "../../reader/types/conversions.ts";
import type { Event } from "./events.ts";
import { evaluate } from "./expressions.ts";
import { heldValue } from "./load-store.ts";
import type { Breakable, Machine } from "./machine.ts";
import type { Changes } from "./memory.ts";
import { walkStatement } from "./statements.ts";
import { tracesOf } from "./unknowns.ts";
import { integerOf, type Value } from "./values.ts";

type SwitchStatement = Extract<TypedStatement, { kind: "switch" }>;

/** Statements from a label up to the next one; labels that stand together share them. */
interface Arm {
  readonly labels: readonly Extract<TypedStatement, { kind: "case" | "default" }>[];
  readonly statements: readonly TypedStatement[];
}

export function walkSwitch(machine: Machine, statement: SwitchStatement): void {
  const selector = evaluate(machine, statement.condition);
  const outer = machine.breakable;
  const breakable: Breakable = {
    mark: machine.memory.mark(),
    breaks: [],
    continues: undefined,
    outerObjects: machine.living.length,
    outer,
  };
  const known = integerOf(selector);
  if (known === undefined) walkAllArms(machine, statement, selector, breakable);
  else walkChosenArm(machine, statement, selector, known, breakable);
  machine.breakable = outer;
}

/** The arms of a `switch`, in the order of the text; what stands in front of the first label is left out. */
export function armsOf(body: TypedStatement): Arm[] {
  const arms: { labels: Arm["labels"][number][]; statements: TypedStatement[] }[] = [];
  const statements = body.kind === "block" ? body.statements : [body];
  for (const statement of statements) {
    let inner: TypedStatement | undefined = statement;
    const labels: Arm["labels"][number][] = [];
    while (inner?.kind === "case" || inner?.kind === "default") {
      labels.push(inner);
      inner = inner.body;
    }
    if (labels.length > 0) arms.push({ labels, statements: inner === undefined ? [] : [inner] });
    else arms[arms.length - 1]?.statements.push(statement);
  }
  return arms;
}

function walkChosenArm(
  machine: Machine,
  statement: SwitchStatement,
  selector: Value,
  value: number,
  breakable: Breakable,
): void {
  const arms = armsOf(statement.body);
  const chosen = arms.findIndex(({ labels }) => labels.some((label) => covers(machine, label, value)));
  const first =
    chosen >= 0 ? chosen : arms.findIndex(({ labels }) => labels.some(({ kind }) => kind === "default"));
  if (first < 0) return;
  const events = machine.capture(() =>
    withBreaks(machine, breakable, () => {
      for (const arm of arms.slice(first)) walkArm(machine, arm);
    }),
  );
  const breaks = breakable.breaks.length;
  goOnBehind(machine, breakable);
  const last = events.at(-1);
  const endsInBreak = last?.kind === "leave" && last.how === "break";
  // A `break` ends a `switch` that is told; one at the end of what is done alone needs none told.
  if (breaks === 0) machine.release(events);
  else if (breaks === 1 && endsInBreak) machine.release(events.slice(0, -1));
  else machine.emit({ kind: "branch", at: statement.at, condition: undefined, selector, sides: [events] });
}

function covers(machine: Machine, label: Arm["labels"][number], value: number): boolean {
  if (label.kind === "default") return false;
  const from = integerOf(machine.quietly(() => evaluate(machine, label.value)));
  const { upTo } = label;
  if (upTo === undefined) return from === value;
  const to = integerOf(machine.quietly(() => evaluate(machine, upTo)));
  return from !== undefined && to !== undefined && value >= from && value <= to;
}

function walkArm(machine: Machine, arm: Arm): void {
  for (const statement of arm.statements) walkStatement(machine, statement);
}

function withBreaks(machine: Machine, breakable: Breakable, run: () => void): void {
  machine.breakable = breakable;
  run();
}

/** Goes on behind the `switch`: from its `break`s and from the end of its last arm. */
function goOnBehind(machine: Machine, breakable: Breakable): void {
  if (breakable.breaks.length === 0) return;
  const outcomes: Changes[] = [...breakable.breaks];
  if (machine.alive) outcomes.push(machine.memory.changesSince(breakable.mark));
  machine.memory.undoTo(breakable.mark);
  machine.continueFrom(outcomes, [], (place) => heldValue(machine, place));
}

/** Every arm from the state at the `switch`, joined with what falls through into it. */
function walkAllArms(
  machine: Machine,
  statement: SwitchStatement,
  selector: Value,
  breakable: Breakable,
): void {
  const arms = armsOf(statement.body);
  const { memory } = machine;
  const why = tracesOf(selector);
  const sides: Event[][] = [];
  let falling: Changes | undefined;
  for (const arm of arms) {
    const starts = falling === undefined ? [new Map()] : [new Map(), falling];
    memory.undoTo(breakable.mark);
    machine.continueFrom(starts, why, (place) => heldValue(machine, place));
    sides.push(machine.capture(() => withBreaks(machine, breakable, () => walkArm(machine, arm))));
    falling = machine.alive ? memory.changesSince(breakable.mark) : undefined;
  }
  memory.undoTo(breakable.mark);
  const outcomes: Changes[] = [...breakable.breaks];
  if (falling !== undefined) outcomes.push(falling);
  if (!isComplete(statement, arms)) {
    outcomes.push(new Map());
    sides.push([]);
  }
  if (sides.some((events) => events.length > 0)) {
    machine.emit({
      kind: "branch",
      at: statement.at,
      condition: undefined,
      selector,
      sides,
    });
  }
  machine.decided(why);
  machine.continueFrom(outcomes, why, (place) => heldValue(machine, place));
}

/** Whether some arm is taken for every value. */
function isComplete(statement: SwitchStatement, arms: readonly Arm[]): boolean {
  if (arms.some(({ labels }) => labels.some(({ kind }) => kind === "default"))) return true;
  const type = statement.condition.type;
  if (type.kind !== "enumeration" || integerTypeOf(type) === undefined) return false;
  const labels = arms.reduce((sum, arm) => sum + arm.labels.length, 0);
  return labels >= type.enumeration.enumerators.length;
}
