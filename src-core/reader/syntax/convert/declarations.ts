import type { RawNode } from "../grammar/raw-nodes.ts";
import type { Declaration, InitDeclarator, Name, NamePart } from "../nodes.ts";
import { assemblyOf } from "./assembly.ts";
import { declaratorOf } from "./declarators.ts";
import { expressionOf } from "./expressions.ts";
import { functionOf } from "./functions.ts";
import { initializerOf } from "./initializers.ts";
import { nameOf } from "./names.ts";
import { childOf, type Reading } from "./reading.ts";
import { accessOf } from "./records.ts";
import { templateOf } from "./templates.ts";
import { specifiersOf, typeNameOf } from "./types.ts";

/** The declarations among the children of a file, a class body or a braced list of declarations. */
export function declarationsOf(reading: Reading, children: readonly RawNode[]): readonly Declaration[] {
  const found: Declaration[] = [];
  let isBare = false;
  for (const child of children) {
    // The grammar gives `struct s {...}` and its semicolon apart.
    const isRest = punctuation.has(child.type) || (isBare && child.type === ";");
    isBare = bareTypes.has(child.type);
    const declaration = isRest ? undefined : declarationOf(reading, child);
    if (declaration !== undefined) found.push(declaration);
  }
  return found;
}

const punctuation: ReadonlySet<string> = new Set(["{", "}", ":", "MISSING"]);
const bareTypes: ReadonlySet<string> = new Set([
  "struct_specifier",
  "union_specifier",
  "class_specifier",
  "enum_specifier",
  "primitive_type",
  "type_identifier",
  "qualified_identifier",
  "template_type",
]);

export function notUnderstoodDeclaration(reading: Reading, first: number, end: number): Declaration {
  reading.note(first, end, "This declaration is not understood.");
  return { kind: "not-understood", first, end, what: "declaration not understood" };
}

/** One declaration; undefined for what stands for none. */
export function declarationOf(reading: Reading, node: RawNode): Declaration | undefined {
  const { first, end } = node;
  const blanked = reading.presentation.blanked.get(end - 1);
  if (blanked !== undefined && first >= blanked.first && first === end - 1) {
    return notUnderstoodDeclaration(reading, blanked.first, blanked.end);
  }
  if (node.broken) return notUnderstoodDeclaration(reading, first, end);
  return reading.deeper(
    () => converted(reading, node),
    () => notUnderstoodDeclaration(reading, first, end),
  );
}

function converted(reading: Reading, node: RawNode): Declaration | undefined {
  const { first, end } = node;
  if (bareTypes.has(node.type)) return bareSpecifiers(reading, node);
  switch (node.type) {
    case "declaration":
    case "field_declaration":
      return simpleOf(reading, node);
    case "function_definition":
      return functionOf(reading, node);
    case ";":
      return { kind: "empty", first, end };
    case "linkage_specification":
      return linkageOf(reading, node);
    case "namespace_definition":
      return namespaceOf(reading, node);
    case "template_declaration":
      return templateOf(reading, node);
    case "template_instantiation":
      return { kind: "empty", first, end };
    case "namespace_alias_definition":
      return namespaceAliasOf(reading, node);
    case "alias_declaration": {
      const type = childOf(node, "type");
      const name = childOf(node, "name");
      if (type === undefined || name === undefined) break;
      return { kind: "alias", first, end, name: reading.text(name.first), type: typeNameOf(reading, type) };
    }
    case "using_declaration":
      return usingOf(reading, node);
    case "access_specifier":
      return { kind: "access", first, end, access: accessOf(reading.text(first)) };
    case "static_assert_declaration": {
      const condition = childOf(node, "condition");
      if (condition === undefined) break;
      return { kind: "static-assert", first, end, condition: expressionOf(reading, condition) };
    }
    case "expression_statement":
      return statementAmongDeclarations(reading, node);
  }
  return notUnderstoodDeclaration(reading, first, end);
}

/** `struct s {...};` */
function bareSpecifiers(reading: Reading, node: RawNode): Declaration {
  const specifiers = specifiersOf(reading, node, node);
  const end = Math.max(node.end, specifiers.end);
  const hasEnd = reading.text(end) === ";";
  return {
    kind: "simple",
    first: specifiers.first,
    end: hasEnd ? end + 1 : end,
    specifiers,
    declarators: [],
  };
}

function statementAmongDeclarations(reading: Reading, node: RawNode): Declaration {
  const { first, end } = node;
  const only = node.children[0];
  if (only?.type === "gnu_asm_expression") {
    return { kind: "assembly", first, end, text: assemblyOf(reading, only).text };
  }
  if (only?.type === ";") return { kind: "empty", first, end };
  return notUnderstoodDeclaration(reading, first, end);
}

function usingOf(reading: Reading, node: RawNode): Declaration {
  const { first, end } = node;
  const name = node.children.find((child) => child.type.endsWith("identifier"));
  if (name === undefined) return notUnderstoodDeclaration(reading, first, end);
  const namespace = reading.text(first + 1) === "namespace";
  return { kind: "using", first, end, name: nameOf(reading, name), namespace };
}

function linkageOf(reading: Reading, node: RawNode): Declaration {
  const { first, end } = node;
  const value = childOf(node, "value");
  const body = childOf(node, "body");
  const members = body?.type === "declaration_list" ? body.children : body === undefined ? [] : [body];
  return {
    kind: "linkage",
    first,
    end,
    language: reading.text(value?.first ?? -1).replace(/^"|"$/g, ""),
    members: declarationsOf(reading, members),
  };
}

/** `namespace name = target;` (C++11 7.3.2). */
function namespaceAliasOf(reading: Reading, node: RawNode): Declaration {
  const { first, end } = node;
  const name = childOf(node, "name");
  const equals = node.children.find(({ type }) => type === "=");
  if (name === undefined || equals === undefined) return notUnderstoodDeclaration(reading, first, end);
  const parts: NamePart[] = [];
  for (let index = equals.end; index < end && reading.text(index) !== ";"; index += 1) {
    const text = reading.text(index);
    if (text !== "::") parts.push({ first: index, end: index + 1, text, templateArguments: undefined });
  }
  const global = reading.text(equals.end) === "::";
  const target: Name = { first: equals.end, end: parts.at(-1)?.end ?? equals.end, global, parts };
  return { kind: "namespace-alias", first, end, name: reading.text(name.first), target };
}

function namespaceOf(reading: Reading, node: RawNode): Declaration {
  const name = childOf(node, "name");
  return {
    kind: "namespace",
    first: node.first,
    end: node.end,
    inline: reading.text(node.first) === "inline",
    name: name === undefined ? undefined : nameOf(reading, name),
    members: declarationsOf(reading, childOf(node, "body")?.children ?? []),
  };
}

/** Variables, prototypes, typedefs, fields. */
export function simpleOf(reading: Reading, node: RawNode): Declaration {
  const type = childOf(node, "type");
  const firstDeclarator = node.children.find(
    (child) => child.field === "declarator" || child.type === "bitfield_clause",
  );
  const specifiersEnd = firstDeclarator?.first ?? type?.end ?? node.end;
  const specifiers = specifiersOf(reading, { first: node.first, end: specifiersEnd }, type);
  const declarators = initDeclarators(reading, node);
  const place = { first: Math.min(specifiers.first, node.first), end: node.end };
  const only = declarators.length === 1 ? declarators[0] : undefined;
  if (only !== undefined && isPure(reading, only)) {
    return { ...place, kind: "special-function", specifiers, declarator: only.declarator, special: "pure" };
  }
  return { ...place, kind: "simple", specifiers, declarators };
}

/** `= 0` behind a member function (C++ [class.mem]). */
function isPure(reading: Reading, init: InitDeclarator): boolean {
  const { initializer, declarator } = init;
  if (initializer?.kind !== "value" || declarator.parts[0]?.kind !== "function") return false;
  return initializer.value.kind === "number" && reading.text(initializer.value.first) === "0";
}

function initDeclarators(reading: Reading, node: RawNode): readonly InitDeclarator[] {
  const found: InitDeclarator[] = [];
  for (const child of node.children) {
    if (child.field === "declarator") found.push(initDeclarator(reading, child));
    else if (child.type === "bitfield_clause") addBitWidth(reading, child, found);
    else if (child.field === "default_value" || child.field === "value")
      addInitializer(reading, child, found);
  }
  return found;
}

function initDeclarator(reading: Reading, node: RawNode): InitDeclarator {
  const isInit = node.type === "init_declarator";
  const inner = isInit ? childOf(node, "declarator") : node;
  const value = isInit ? childOf(node, "value") : undefined;
  const declarator = declaratorOf(reading, inner, node.first);
  const initializer = value === undefined ? undefined : initializerOf(reading, value);
  return {
    first: node.first,
    end: Math.max(node.end, declarator.end, initializer?.end ?? 0),
    declarator,
    bitWidth: undefined,
    initializer,
  };
}

/** `: 3`, behind a name or without one (C11 6.7.2.1p12). */
function addBitWidth(reading: Reading, clause: RawNode, found: InitDeclarator[]): void {
  const width = clause.children[clause.children.length - 1];
  if (width === undefined) return;
  const last = found[found.length - 1];
  const isNamed = last !== undefined && last.bitWidth === undefined && reading.text(clause.first - 1) !== ",";
  const bitWidth = expressionOf(reading, width);
  if (isNamed) {
    found[found.length - 1] = { ...last, end: clause.end, bitWidth };
    return;
  }
  const declarator = declaratorOf(reading, undefined, clause.first);
  found.push({ first: clause.first, end: clause.end, declarator, bitWidth, initializer: undefined });
}

function addInitializer(reading: Reading, value: RawNode, found: InitDeclarator[]): void {
  const last = found[found.length - 1];
  if (last === undefined) return;
  const initializer = initializerOf(reading, value);
  found[found.length - 1] = { ...last, end: initializer.end, initializer };
}
