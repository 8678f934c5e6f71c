import type { TypedStatement } from "../../reader/typed/nodes.ts";
import { walkStatement } from "../../reader/typed/walk.ts";
import { allEffects, directEffects } from "./effects.ts";
import { forgetEffects } from "./forget.ts";
import type { Machine } from "./machine.ts";

type Label = Extract<TypedStatement, { kind: "label" }>;

const known = new WeakMap<TypedStatement, ReadonlySet<string>>();

/** Labels of a body that a `goto` further on leads back to; kept with the body, which never changes. */
function ledBackTo(body: TypedStatement): ReadonlySet<string> {
  let labels = known.get(body);
  if (labels === undefined) {
    const passed = new Set<string>();
    const found = new Set<string>();
    walkStatement(body, {
      statement(statement) {
        if (statement.kind === "label") passed.add(statement.name);
        else if (statement.kind === "goto" && passed.has(statement.name)) found.add(statement.name);
        return true;
      },
      expression: (expression) => expression.kind === "statement-value",
    });
    labels = found;
    known.set(body, labels);
  }
  return labels;
}

/** Behind a label that is come to again and again, what the function writes is unknown, as in a loop. */
export function forgetWhatIsRepeated(machine: Machine, label: Label): void {
  const symbol = machine.frame?.function;
  const body = symbol && machine.linkage.definitionOf(symbol)?.body;
  if (body === undefined || !ledBackTo(body).has(label.name)) return;
  const effects = machine.loopEffects.get(label) ?? allEffects([directEffects(body)], machine.linkage);
  machine.loopEffects.set(label, effects);
  forgetEffects(machine, effects);
}
