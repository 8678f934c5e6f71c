import type { Variable } from "../../reader/typed/nodes.ts";
import type { LoopParts } from "./counters.ts";
import { isWhole } from "./expressions.ts";
import { heldValue } from "./load-store.ts";
import { loopPlan } from "./loop-plan.ts";
import { emitLoop, goOn, mostTurns, type Of, type Walking, walkOnce, walkTurn } from "./loops.ts";
import { placeNamedBy } from "./lvalues.ts";
import type { Breakable, Machine } from "./machine.ts";
import type { Place } from "./places.ts";
import { integer, unknownOf } from "./unknowns.ts";
import type { Value } from "./values.ts";

/** Elements of a known array one by one, anything else once. */
export function walkRangeFor(machine: Machine, statement: Of<"range-for">): void {
  const { variable, range, body } = statement;
  const place = machine.placeOf(variable);
  const array = isWhole(range) ? placeNamedBy(machine, range) : undefined;
  const length = range.type.kind === "array" ? range.type.length : undefined;
  const known = array !== undefined && length !== undefined && length <= mostTurns ? length : undefined;
  const outer = machine.breakable;
  const breakable: Breakable = {
    mark: machine.memory.mark(),
    breaks: [],
    continues: [],
    outerObjects: machine.living.length,
    outer,
  };
  const parts: LoopParts = {
    statement,
    declared: undefined,
    condition: undefined,
    step: undefined,
    body,
    tested: "before",
  };
  const walking: Walking = { parts, breakable, passes: [], condition: undefined, terms: [] };
  machine.breakable = breakable;
  if (known === undefined || array === undefined) {
    machine.memory.overwrite(place, unknownOf(variable.type, undefined));
    walkOnce(machine, walking, false, false);
  } else {
    for (let index = 0; index < known && machine.alive; index += 1) {
      const element = machine.memory.element(array, index);
      machine.memory.remake(place, machine.active.length);
      machine.memory.write(place, boundValue(machine, variable, element));
      walking.passes.push(machine.capture(() => walkTurn(machine, walking)));
    }
  }
  machine.breakable = outer;
  goOn(machine, breakable);
  const plan = loopPlan(parts);
  emitLoop(
    machine,
    walking,
    { ...plan, endless: false },
    { turns: known, atMost: known, mayBeSkipped: false },
  );
}

/** What the variable of a `range-for` holds in the turn of this element. */
function boundValue(machine: Machine, variable: Variable, element: Place): Value {
  if (variable.type.kind === "reference" || variable.type.kind === "record") {
    return { kind: "address", place: element, from: undefined };
  }
  const value = heldValue(machine, element);
  return value.kind === "integer" ? integer(value.value, value.from, true) : value;
}
