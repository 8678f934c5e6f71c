import { plain } from "../figures.ts";
import { quantity } from "../model/quantities.ts";
import type { Target } from "../notes/attachment/declared.ts";
import { requirement, sourceOf } from "./bounds.ts";
import { type Explanation, explanation, holds } from "./explanation.ts";
import type { Place } from "./place.ts";
import { valueOfTarget } from "./target-value.ts";

/** A constant of which a note says what it means: at its declaration and wherever it is used. */
export function explainNotedConstant(place: Place): Explanation | undefined {
  for (const { note, targets } of place.facts.notes.attached) {
    if (note.kind !== "means") continue;
    const known = quantity(note.quantity.value);
    for (const { target } of targets) {
      const span = known && namedAt(place, target);
      if (known === undefined || span === undefined) continue;
      const value = valueOfTarget(place, target);
      const figure =
        value === undefined ? "" : ` = ${plain(value, 3)}${known.unit === "none" ? "" : ` ${known.unit}`}`;
      return explanation(span, `${target.name}${figure}: ${known.title}`, [
        known.meaning,
        requirement(known, value),
        sourceOf(known),
      ]);
    }
  }
  return undefined;
}

function namedAt({ unit, file, offset }: Place, target: Target) {
  if (target.kind === "macro") {
    const { definition } = target.macro;
    if (definition !== undefined && holds(definition, file, offset)) return definition;
    return unit.preprocessed.uses.find(
      (use) =>
        use.name === target.name && isSame(use.definition, definition) && holds(use.call, file, offset),
    )?.call;
  }
  const wanted = symbolOf(target);
  return unit.typed.references.find(
    ({ token, target: meant }) => meant === wanted && holds(token, file, offset),
  )?.token;
}

function isSame(
  a: { file: string; start: number } | undefined,
  b: { file: string; start: number } | undefined,
): boolean {
  return a !== undefined && a.file === b?.file && a.start === b.start;
}

function symbolOf(target: Exclude<Target, { kind: "macro" }>) {
  switch (target.kind) {
    case "variable":
      return target.variable;
    case "enumerator":
      return target.enumerator;
    case "field":
      return target.field;
    case "function":
      return target.function;
  }
}
