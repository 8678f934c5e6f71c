import type { Span } from "../finding.ts";
import type { MacroDefinition, Token } from "../reader/tokens.ts";
import { holds } from "./explanation.ts";
import { expansionsOf, macroCallAt } from "./macro-uses.ts";
import type { NamedConstant } from "./named-constant.ts";
import type { Place } from "./place.ts";

/** A macro without parameters: at its name, in its body, or where it is used. */
export function macroConstantAt(place: Place): NamedConstant | undefined {
  return inDefinition(place) ?? atUse(place);
}

function inDefinition(place: Place): NamedConstant | undefined {
  const { unit, file, offset } = place;
  for (const macro of unit.preprocessed.definitions) {
    const { definition, parameters, body } = macro;
    if (definition?.file !== file) continue;
    if (holds(definition, file, offset))
      return parameters === undefined ? ofMacro(place, macro, "name", definition) : undefined;
    const token = body.find((each) => each.kind !== "punctuator" && holds(each, file, offset));
    if (token === undefined) continue;
    if (parameters === undefined && isWhole(body, token)) return ofMacro(place, macro, "value", token);
    const named = unit.preprocessed.definitions.find(({ name }) => name === token.text);
    return named !== undefined && named.parameters === undefined
      ? ofMacro(place, named, "use", token)
      : undefined;
  }
  return undefined;
}

function atUse(place: Place): NamedConstant | undefined {
  const use = macroCallAt(place);
  const macro =
    use && place.unit.preprocessed.definitions.find(({ definition }) => isSame(definition, use.definition));
  return use === undefined || macro === undefined || macro.parameters !== undefined
    ? undefined
    : ofMacro(place, macro, "use", use.call);
}

/** Whether the token is all of the body but parentheses. */
function isWhole(body: readonly Token[], token: Token): boolean {
  return body.every((each) => each === token || each.text === "(" || each.text === ")");
}

function ofMacro(
  { unit }: Place,
  macro: MacroDefinition,
  part: NamedConstant["part"],
  { file, start, end }: Span,
): NamedConstant {
  const expansions = expansionsOf(unit, macro);
  const direct = unit.preprocessed.uses.filter(({ definition }) => isSame(definition, macro.definition));
  const calls = direct.length > 0 ? direct : expansions;
  return {
    name: macro.name,
    part,
    span: { file, start, end },
    declared: macro.definition ?? { file, start, end },
    uses: calls.map(({ call }) => call),
    value: expansions[0]?.expression,
  };
}

function isSame(a: Span | undefined, b: Span | undefined): boolean {
  return a !== undefined && b !== undefined && a.file === b.file && a.start === b.start;
}
