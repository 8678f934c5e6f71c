import type { TemplateParameter } from "../syntax/nodes.ts";
import { qualify } from "../types/derive.ts";
import { atOf, type Context } from "./context.ts";
import { convertTo } from "./convert.ts";
import { parameterType } from "./declarators.ts";
import type { TemplateArgumentValue } from "./scope.ts";
import { DeclaredVariable } from "./symbols.ts";

export function parameterName(parameter: TemplateParameter): string | undefined {
  return parameter.kind === "type" ? parameter.name : parameter.parameter.declarator.name?.parts[0]?.text;
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
    const at = atOf(context, parameter);
    if (argument.kind === "type") {
      context.scope.names.set(name, { kind: "type", name, type: argument.type, at });
      continue;
    }
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
    context.scope.names.set(name, variable);
  }
}
