import type { RawNode } from "../grammar/raw-nodes.ts";
import type { Declarator, DeclaratorPart, Name, Parameter } from "../nodes.ts";
import { qualifiers } from "../outline/words.ts";
import { expressionOf } from "./expressions.ts";
import { nameOf } from "./names.ts";
import { childOf, childOfType, type Reading } from "./reading.ts";
import { specifiersOf, typeNameOf } from "./types.ts";

interface Draft {
  name: Name | undefined;
  readonly parts: DeclaratorPart[];
  /** Behind the last token that the grammar or the outline read. */
  end: number;
}

/** A declarator, with a name or without; `at` is where it would stand if nothing is written. */
export function declaratorOf(reading: Reading, node: RawNode | undefined, at: number): Declarator {
  if (node === undefined) return { first: at, end: at, name: undefined, parts: [], attributes: [] };
  const draft: Draft = { name: undefined, parts: [], end: node.end };
  collect(reading, node, draft);
  const end = Math.max(draft.end, draft.name?.end ?? 0);
  return {
    first: node.first,
    end,
    name: draft.name,
    parts: draft.parts,
    attributes: reading.takeAttributes(node.first, reading.attributesFrom(end)),
  };
}

/** Parts from the name outwards: what binds closest comes first (C11 6.7.6). */
function collect(reading: Reading, node: RawNode, draft: Draft): void {
  switch (node.type) {
    case "pointer_declarator":
    case "abstract_pointer_declarator":
      inner(reading, node, draft);
      draft.parts.push(pointerPart(reading, node));
      return;
    case "reference_declarator":
    case "abstract_reference_declarator":
      inner(reading, node, draft);
      draft.parts.push({
        first: node.first,
        end: node.first + 1,
        kind: "reference",
        rvalue: reading.text(node.first) === "&&",
      });
      return;
    case "array_declarator":
    case "abstract_array_declarator":
      inner(reading, node, draft);
      draft.parts.push(arrayPart(reading, node));
      return;
    case "function_declarator":
    case "abstract_function_declarator":
      inner(reading, node, draft);
      draft.parts.push(functionPart(reading, node, draft));
      return;
    case "parenthesized_declarator":
    case "abstract_parenthesized_declarator":
      inner(reading, node, draft);
      return;
    case "operator_cast": {
      draft.name = nameOf(reading, node);
      const list = childOf(node, "declarator");
      if (list !== undefined) collectFunction(reading, list, draft);
      return;
    }
    case "variadic_declarator": {
      const name = childOfType(node, "identifier");
      if (name !== undefined) draft.name = nameOf(reading, name);
      return;
    }
    case "structured_binding_declarator":
      reading.note(node.first, node.end, "This kind of declarator is not understood.");
      return;
    default: {
      draft.name = nameOf(reading, node);
      const conversion = conversionIn(node);
      const list = conversion && childOf(conversion, "declarator");
      if (list !== undefined) collectFunction(reading, list, draft);
    }
  }
}

/** `operator T ()` at the end of a qualified name. */
function conversionIn(node: RawNode): RawNode | undefined {
  if (node.type === "operator_cast") return node;
  const last = node.children[node.children.length - 1];
  return node.type === "qualified_identifier" && last !== undefined ? conversionIn(last) : undefined;
}

/** The parameter list of a conversion operator; the pointers before it belong to its name. */
function collectFunction(reading: Reading, node: RawNode, draft: Draft): void {
  if (node.type === "abstract_function_declarator") {
    draft.parts.push(functionPart(reading, node, draft));
    return;
  }
  const below = node.children.find((child) => child.type.startsWith("abstract_"));
  if (below !== undefined) collectFunction(reading, below, draft);
}

/** What the node stands around: its `declarator`, which references and parentheses leave without a name. */
function inner(reading: Reading, node: RawNode, draft: Draft): void {
  const child = childOf(node, "declarator") ?? node.children.find((each) => isDeclarator(each));
  if (child === undefined) return;
  reading.deeper(
    () => collect(reading, child, draft),
    () => reading.note(child.first, child.end, "This declarator is nested too deeply."),
  );
}

function isDeclarator(node: RawNode): boolean {
  return (
    node.type.endsWith("declarator") || node.type.endsWith("identifier") || node.type === "operator_name"
  );
}

function pointerPart(reading: Reading, node: RawNode): DeclaratorPart {
  let end = node.first + 1;
  let isConst = false;
  let isVolatile = false;
  // The grammar does not see qualifiers: they are read from the tokens.
  for (; ; end += 1) {
    const qualifier = qualifiers.get(reading.text(end));
    if (qualifier === undefined) break;
    if (qualifier === "const") isConst = true;
    if (qualifier === "volatile") isVolatile = true;
  }
  return { first: node.first, end, kind: "pointer", const: isConst, volatile: isVolatile };
}

function arrayPart(reading: Reading, node: RawNode): DeclaratorPart {
  const size = childOf(node, "size");
  const open = node.children.find((child) => child.type === "[");
  return {
    first: open?.first ?? node.first,
    end: node.end,
    kind: "array",
    length: size === undefined || size.type === "*" ? undefined : expressionOf(reading, size),
  };
}

function functionPart(reading: Reading, node: RawNode, draft: Draft): DeclaratorPart {
  const list = childOf(node, "parameters");
  const trailing = childOfType(node, "trailing_return_type");
  const result = trailing?.children.find((child) => child.type === "type_descriptor");
  const end = list?.end ?? node.end;
  const isConst = reading.text(end) === "const";
  draft.end = Math.max(draft.end, isConst ? end + 1 : end);
  return {
    first: list?.first ?? node.first,
    end: Math.max(trailing?.end ?? end, isConst ? end + 1 : end),
    kind: "function",
    parameters: list === undefined ? [] : parametersOf(reading, list),
    variadic:
      list?.children.some((child) => child.type === "..." || child.type === "variadic_parameter") ?? false,
    const: isConst,
    trailingReturn: result === undefined ? undefined : typeNameOf(reading, result),
  };
}

function parametersOf(reading: Reading, list: RawNode): readonly Parameter[] {
  const found: Parameter[] = [];
  for (const child of list.children) {
    if (child.type.endsWith("parameter_declaration")) found.push(parameterOf(reading, child));
    else if (child.type === "ERROR") {
      reading.note(child.first, child.end, "This part of a parameter list is not understood.");
    }
  }
  return found;
}

export function parameterOf(reading: Reading, node: RawNode): Parameter {
  const type = childOf(node, "type");
  const declarator = childOf(node, "declarator");
  const value = childOf(node, "default_value");
  const specifiersEnd = declarator?.first ?? type?.end ?? node.end;
  const specifiers = specifiersOf(reading, { first: node.first, end: specifiersEnd }, type);
  return {
    first: Math.min(specifiers.first, node.first),
    end: Math.max(node.end, specifiers.end),
    specifiers,
    declarator: declaratorOf(reading, declarator, specifiers.end),
    pack: node.type === "variadic_parameter_declaration",
    defaultValue: value === undefined ? undefined : expressionOf(reading, value),
  };
}
