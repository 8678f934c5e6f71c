import type { RawNode } from "../grammar/raw-nodes.ts";
import type { Declaration, TemplateParameter } from "../nodes.ts";
import { declarationsOf, notUnderstoodDeclaration } from "./declarations.ts";
import { parameterOf } from "./declarators.ts";
import { childOf, type Reading } from "./reading.ts";
import { plainTypeName } from "./types.ts";

/** `template <...>` and what it makes a template (C++ [temp.pre]). */
export function templateOf(reading: Reading, node: RawNode): Declaration {
  const { first, end } = node;
  const list = childOf(node, "parameters");
  const behind = node.children.filter((child) => child.type !== "template" && child.field !== "parameters");
  const declaration = declarationsOf(reading, behind)[0];
  if (list === undefined || declaration === undefined) return notUnderstoodDeclaration(reading, first, end);
  const parameters: TemplateParameter[] = [];
  for (const child of list.children) {
    const parameter = templateParameter(reading, child);
    if (parameter !== undefined) parameters.push(parameter);
  }
  return { kind: "template", first, end: Math.max(end, declaration.end), parameters, declaration };
}

function templateParameter(reading: Reading, node: RawNode): TemplateParameter | undefined {
  const { first, end } = node;
  switch (node.type) {
    case "parameter_declaration":
    case "optional_parameter_declaration":
    case "variadic_parameter_declaration":
      return { kind: "value", first, end, parameter: parameterOf(reading, node) };
    case "optional_type_parameter_declaration": {
      const type = childOf(node, "default_type");
      return {
        kind: "type",
        first,
        end,
        name: typeParameterName(reading, node),
        pack: false,
        defaultType: type === undefined ? undefined : plainTypeName(reading, type),
      };
    }
    case "template_template_parameter_declaration":
      reading.note(first, end, "Templates as parameters are not understood.");
      return typeParameter(reading, node, false);
    case "variadic_type_parameter_declaration":
      return typeParameter(reading, node, true);
    case "type_parameter_declaration":
      return typeParameter(reading, node, false);
    default:
      return undefined;
  }
}

function typeParameter(reading: Reading, node: RawNode, pack: boolean): TemplateParameter {
  const { first, end } = node;
  const name = typeParameterName(reading, node);
  return { kind: "type", first, end, name, pack, defaultType: undefined };
}

function typeParameterName(reading: Reading, node: RawNode): string | undefined {
  const name = node.children.find((child) => child.type === "type_identifier");
  return name === undefined ? undefined : reading.text(name.first);
}
