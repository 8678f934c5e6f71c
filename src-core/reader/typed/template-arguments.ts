import type { TemplateParameter } from "../syntax/nodes.ts";
import { qualify } from "../types/derive.ts";
import { atOf, type Context } from "./context.ts";
import { convertTo } from "./convert.ts";
import { parameterType } from "./declarators.ts";
import type { Entry, TemplateArgumentValue } from "./scope.ts";
import { DeclaredVariable } from "./symbols.ts";

export function parameterName(parameter: TemplateParameter): string | undefined {
  return parameter.kind === "type" ? parameter.name : parameter.parameter.declarator.name?.parts[0]?.text;
}

/** `typename... Ts`, `int... Ns` */
export function isPack(parameter: TemplateParameter): boolean {
  return parameter.kind === "type" ? parameter.pack : parameter.parameter.pack;
}

/** Declares template parameters as what they stand for in one instance, in `context.scope`. */
export function bindArguments(
  context: Context,
  parameters: readonly TemplateParameter[],
  given: readonly TemplateArgumentValue[],
): void {
  for (const [index, parameter] of parameters.entries()) {
    const argument = given[index];
    const name = parameterName(parameter);
    if (argument === undefined || name === undefined) continue;
    context.scope.names.set(name, entryOf(context, parameter, name, argument));
  }
}

function entryOf(
  context: Context,
  parameter: TemplateParameter,
  name: string,
  argument: TemplateArgumentValue,
): Entry {
  const at = atOf(context, parameter);
  switch (argument.kind) {
    case "type":
      return { kind: "type", name, type: argument.type, at };
    case "pack":
      return {
        kind: "pack",
        elements: argument.elements.map((element) => entryOf(context, parameter, name, element)),
      };
    case "value": {
      const declared =
        parameter.kind === "value" ? parameterType(context, parameter.parameter) : argument.value.type;
      const type = declared.kind === "unknown" ? argument.value.type : declared;
      const variable = new DeclaredVariable({
        name,
        qualifiedName: name,
        linkageName: undefined,
        type: qualify(type, { const: true, volatile: false }),
        storage: "file",
        constexpr: true,
        programMemory: false,
        attributes: [],
        at,
        declarationAt: at,
      });
      const value = convertTo(context, argument.value, type, "argument");
      variable.initializer = { kind: "value", at: value.at, value };
      return variable;
    }
  }
}
