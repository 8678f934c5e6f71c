import type { RawNode } from "../grammar/raw-nodes.ts";
import type { Name, NamePart, TemplateArgument } from "../nodes.ts";
import { expressionOf } from "./expressions.ts";
import { childOf, type Reading } from "./reading.ts";
import { typeNameOf } from "./types.ts";

/** A name from whatever node the grammar made of it. */
export function nameOf(reading: Reading, node: RawNode): Name {
  const parts: NamePart[] = [];
  collect(reading, node, parts);
  const first = parts[0]?.first ?? node.first;
  const global = reading.text(node.first) === "::";
  return {
    first: global ? node.first : first,
    end: parts[parts.length - 1]?.end ?? node.end,
    global,
    parts,
  };
}

/** A name of one token. */
export function simpleName(reading: Reading, index: number): Name {
  const part = { first: index, end: index + 1, text: reading.text(index), templateArguments: undefined };
  return { first: index, end: index + 1, global: false, parts: [part] };
}

function collect(reading: Reading, node: RawNode, parts: NamePart[]): void {
  switch (node.type) {
    case "qualified_identifier":
    case "nested_namespace_specifier":
      for (const child of node.children) if (child.type !== "::") collect(reading, child, parts);
      return;
    case "template_type":
    case "template_function":
    case "template_method":
      parts.push(templatePart(reading, node));
      return;
    case "dependent_name":
    case "dependent_type": {
      const inner = node.children[node.children.length - 1];
      if (inner !== undefined) collect(reading, inner, parts);
      return;
    }
    case "destructor_name":
      parts.push(part(node.first, node.end, `~${reading.text(node.end - 1)}`));
      return;
    case "operator_name":
      parts.push(operatorPart(reading, node));
      return;
    case "operator_cast":
      parts.push(conversionPart(reading, node));
      return;
    default:
      if (reading.text(node.first) === "operator") parts.push(operatorPart(reading, node));
      else parts.push(part(node.first, node.first + 1, reading.text(node.first)));
  }
}

function part(first: number, end: number, text: string): NamePart {
  return { first, end, text, templateArguments: undefined };
}

function templatePart(reading: Reading, node: RawNode): NamePart {
  const name = childOf(node, "name");
  const list = childOf(node, "arguments");
  const inner: NamePart[] = [];
  if (name !== undefined) collect(reading, name, inner);
  const args = list === undefined ? undefined : templateArgumentsOf(reading, list);
  return { first: node.first, end: node.end, text: inner[0]?.text ?? "", templateArguments: args };
}

function templateArgumentsOf(reading: Reading, list: RawNode): readonly TemplateArgument[] {
  const found: TemplateArgument[] = [];
  for (const child of list.children) {
    if (child.type === "<" || child.type === ">" || child.type === ",") continue;
    if (child.type === "type_descriptor" && reading.specifiers(child.first) !== undefined) {
      found.push({ kind: "type", type: typeNameOf(reading, child) });
    } else if (child.type === "type_descriptor") {
      // The grammar takes any name for a type; the outline saw none.
      found.push({ kind: "value", value: unseenType(reading, child) });
    } else found.push({ kind: "value", value: expressionOf(reading, child) });
  }
  return found;
}

function unseenType(reading: Reading, node: RawNode): ReturnType<typeof expressionOf> {
  const only = node.children.length === 1 ? node.children[0] : undefined;
  if (only === undefined)
    return { kind: "not-understood", first: node.first, end: node.end, what: "template argument" };
  return { kind: "name", first: node.first, end: node.end, name: nameOf(reading, only) };
}

/** `operator+`, `operator[]`, `operator new[]`; the second token of a pair of brackets is hidden from the grammar. */
function operatorPart(reading: Reading, node: RawNode): NamePart {
  const { first } = node;
  const symbol = reading.text(first + 1);
  if (symbol === "(") return part(first, first + 3, "operator()");
  if (symbol === "[") return part(first, first + 3, "operator[]");
  if (symbol.startsWith('"')) {
    const suffix = node.end > first + 2 ? reading.text(first + 2) : "";
    return part(first, node.end, `operator${symbol}${suffix}`);
  }
  if (symbol !== "new" && symbol !== "delete") {
    return /^\w/.test(symbol) ? conversionPart(reading, node) : part(first, first + 2, `operator${symbol}`);
  }
  const isArray = reading.text(first + 2) === "[";
  return part(first, isArray ? first + 4 : first + 2, `operator ${symbol}${isArray ? "[]" : ""}`);
}

/** `operator const char *`. */
function conversionPart(reading: Reading, node: RawNode): NamePart {
  const words: string[] = [];
  let end = node.first + 1;
  for (; end < reading.tokens.length && reading.text(end) !== "("; end += 1) words.push(reading.text(end));
  return part(node.first, end, `operator ${words.join(" ")}`);
}
