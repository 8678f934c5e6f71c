import type { Declarator, Expression, Specifiers, TemplateArgument } from "../syntax/nodes.ts";
import { qualifiersOf, qualify } from "../types/derive.ts";
import type { Type } from "../types/types.ts";
import { atOf, type Context } from "./context.ts";
import { integerNode } from "./make.ts";
import type { TemplateArgumentValue, TemplateEntry } from "./scope.ts";
import { parameterName } from "./template-arguments.ts";

/** Arguments of a partial specialisation found so far, by parameter name. */
interface Match {
  readonly context: Context;
  readonly open: ReadonlySet<string>;
  readonly found: Map<string, TemplateArgumentValue>;
}

/**
 * What the parameters of a partial specialisation have to be for its pattern to be these arguments (C++11 14.5.5.1);
 * undefined where it cannot be. Only what is named by a parameter is looked at: whoever asks has to compare the whole.
 */
export function matchPattern(
  context: Context,
  entry: TemplateEntry,
  pattern: readonly TemplateArgument[],
  given: readonly TemplateArgumentValue[],
): TemplateArgumentValue[] | undefined {
  const names = entry.parameters.map(parameterName);
  const open = new Set(names.filter((name) => name !== undefined));
  const match: Match = { context, open, found: new Map() };
  const fits =
    pattern.length <= given.length &&
    pattern.every((argument, index) => {
      const value = given[index];
      return value !== undefined && matchArgument(match, argument, value);
    });
  const found = names.map((name) => (name === undefined ? undefined : match.found.get(name)));
  return fits && found.every((value) => value !== undefined) ? found : undefined;
}

function matchArgument(match: Match, pattern: TemplateArgument, given: TemplateArgumentValue): boolean {
  if (pattern.kind === "value") {
    const name = plainName(pattern.value);
    return name === undefined || !match.open.has(name) ? true : bind(match, name, given);
  }
  if (given.kind !== "type") return false;
  return matchType(match, pattern.type.specifiers, pattern.type.declarator, given.type);
}

function plainName(expression: Expression | undefined): string | undefined {
  return expression?.kind === "name" && expression.name.parts.length === 1
    ? expression.name.parts[0]?.text
    : undefined;
}

function bind({ found }: Match, name: string, value: TemplateArgumentValue): boolean {
  // Where it is found again, the comparison of the whole says whether it is the same.
  if (!found.has(name)) found.set(name, value);
  return true;
}

function matchType(match: Match, specifiers: Specifiers, declarator: Declarator, type: Type): boolean {
  let rest = type;
  for (const part of declarator.parts) {
    switch (part.kind) {
      case "pointer":
        if (rest.kind !== "pointer") return false;
        rest = rest.to;
        break;
      case "reference":
        if (rest.kind !== "reference" || rest.rvalue !== part.rvalue) return false;
        rest = rest.to;
        break;
      case "array": {
        if (rest.kind !== "array") return false;
        const name = plainName(part.length);
        if (name !== undefined && match.open.has(name)) {
          if (rest.length === undefined) return false;
          const at = atOf(match.context, part);
          bind(match, name, {
            kind: "value",
            value: integerNode(at, BigInt(rest.length), match.context.unit.types.size),
          });
        }
        rest = rest.of;
        break;
      }
      case "function": {
        if (rest.kind !== "function") return false;
        const { parameters, returns } = rest;
        if (parameters.length !== part.parameters.length) return false;
        const fits = part.parameters.every((parameter, index) => {
          const taken = parameters[index];
          return taken !== undefined && matchType(match, parameter.specifiers, parameter.declarator, taken);
        });
        if (!fits) return false;
        rest = returns;
        break;
      }
    }
  }
  return matchNamed(match, specifiers, rest);
}

function matchNamed(match: Match, specifiers: Specifiers, type: Type): boolean {
  const { type: named } = specifiers;
  const part = named.kind === "named" ? named.name.parts.at(-1) : undefined;
  if (named.kind !== "named" || part === undefined) return true;
  if (part.templateArguments !== undefined)
    return matchInstance(match, part.text, part.templateArguments, type);
  if (named.name.parts.length > 1 || !match.open.has(part.text)) return true;
  const own = qualifiersOf(type);
  if ((specifiers.const && !own.const) || (specifiers.volatile && !own.volatile)) return false;
  const left = { const: own.const && !specifiers.const, volatile: own.volatile && !specifiers.volatile };
  const { const: _const, volatile: _volatile, ...plain } = type;
  return bind(match, part.text, { kind: "type", type: qualify(plain, left) });
}

/** `Ring<T, N>` as a pattern. */
function matchInstance(
  match: Match,
  name: string,
  pattern: readonly TemplateArgument[],
  type: Type,
): boolean {
  const instance = type.kind === "record" ? match.context.unit.instances.get(type.record) : undefined;
  if (instance === undefined || instance.template.name !== name) return false;
  return pattern.every((argument, index) => {
    const given = instance.arguments[index];
    return given !== undefined && matchArgument(match, argument, given);
  });
}
