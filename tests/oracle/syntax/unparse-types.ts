import type {
  Attribute,
  Declarator,
  DeclaratorPart,
  EnumSpecifier,
  Name,
  NamePart,
  Parameter,
  RecordSpecifier,
  Specifiers,
  TemplateArgument,
  TypeName,
} from "../../../src-core/reader/syntax/nodes.ts";
import { sourceOfDeclaration, type Unparsing } from "./unparse-declarations.ts";
import { sourceOfExpression } from "./unparse-expressions.ts";

export function sourceOfName(context: Unparsing, name: Name): string {
  return (name.global ? "::" : "") + name.parts.map((part) => sourceOfPart(context, part)).join("::");
}

function sourceOfPart(context: Unparsing, part: NamePart): string {
  if (part.templateArguments === undefined) return part.text;
  return `${part.text}<${part.templateArguments.map((each) => sourceOfArgument(context, each)).join(", ")} >`;
}

function sourceOfArgument(context: Unparsing, argument: TemplateArgument): string {
  return argument.kind === "type"
    ? sourceOfType(context, argument.type)
    : `(${sourceOfExpression(context, argument.value)})`;
}

export function sourceOfAttributes(attributes: readonly Attribute[]): string {
  return attributes
    .map(({ name, arguments: args }) => {
      const list = args.length === 0 ? "" : `(${args.join(", ")})`;
      return `__attribute__((${name}${list}))`;
    })
    .join(" ");
}

function sourceOfRecord(context: Unparsing, record: RecordSpecifier): string {
  const name = record.name === undefined ? "" : sourceOfName(context, record.name);
  if (record.members === undefined) return `${record.keyword} ${name}`;
  const bases = record.bases.map(
    (base) => `${base.virtual ? "virtual " : ""}${base.access ?? ""} ${sourceOfName(context, base.name)}`,
  );
  const head = `${record.keyword} ${sourceOfAttributes(record.attributes)} ${name}`;
  const members = record.members.map((member) => sourceOfDeclaration(context, member)).join("\n");
  return `${head}${bases.length === 0 ? "" : ` : ${bases.join(", ")}`} {\n${members}\n}`;
}

function sourceOfEnum(context: Unparsing, enumeration: EnumSpecifier): string {
  const name = enumeration.name === undefined ? "" : sourceOfName(context, enumeration.name);
  const head = `enum ${enumeration.scoped ? "class " : ""}${name}`;
  if (enumeration.enumerators === undefined) return head;
  const base =
    enumeration.underlying === undefined ? "" : ` : ${sourceOfType(context, enumeration.underlying)}`;
  const enumerators = enumeration.enumerators.map((each) =>
    each.value === undefined ? each.name : `${each.name} = ${sourceOfExpression(context, each.value)}`,
  );
  return `${head}${base} { ${enumerators.join(", ")} }`;
}

export function sourceOfSpecifiers(context: Unparsing, specifiers: Specifiers): string {
  const words = [
    ...specifiers.storage.map((word) => (word === "thread_local" ? "__thread" : word)),
    specifiers.const ? "const" : "",
    specifiers.volatile ? "volatile" : "",
    sourceOfAttributes(specifiers.attributes),
    typeWords(context, specifiers),
  ];
  return words.filter((word) => word !== "").join(" ");
}

function typeWords(context: Unparsing, { type }: Specifiers): string {
  switch (type.kind) {
    case "words":
      return type.words.join(" ");
    case "named": {
      const text = sourceOfName(context, type.name);
      // A type that depends on a template's parameters needs the word; elsewhere it does no harm.
      return type.name.parts.length > 1 && context.inTemplate > 0 ? `typename ${text}` : text;
    }
    case "record":
      return sourceOfRecord(context, type.record);
    case "enum":
      return sourceOfEnum(context, type.enumeration);
    case "auto":
      return "auto";
    case "typeof":
      return `__typeof__(${sourceOfExpression(context, type.expression)})`;
    case "none":
      return "";
  }
}

function wrap(context: Unparsing, inner: string, part: DeclaratorPart): string {
  switch (part.kind) {
    case "pointer":
      return `(* ${part.const ? "const " : ""}${part.volatile ? "volatile " : ""}${inner})`;
    case "reference":
      return `(${part.rvalue ? "&&" : "&"} ${inner})`;
    case "array":
      return `${inner}[${part.length === undefined ? "" : sourceOfExpression(context, part.length)}]`;
    case "function":
      return `${inner}(${sourceOfParameters(context, part)})${part.const ? " const" : ""}`;
  }
}

export function sourceOfParameters(
  context: Unparsing,
  part: Extract<DeclaratorPart, { kind: "function" }>,
): string {
  const parameters = part.parameters.map((parameter) => sourceOfParameter(context, parameter));
  if (part.variadic) parameters.push("...");
  return parameters.join(", ");
}

export function sourceOfDeclarator(context: Unparsing, declarator: Declarator): string {
  let text = declarator.name === undefined ? "" : sourceOfName(context, declarator.name);
  let trailing = "";
  for (const part of declarator.parts) {
    text = wrap(context, text, part);
    if (part.kind === "function" && part.trailingReturn !== undefined) {
      trailing = ` -> ${sourceOfType(context, part.trailingReturn)}`;
    }
  }
  return text + trailing;
}

export function sourceOfParameter(context: Unparsing, parameter: Parameter): string {
  const value =
    parameter.defaultValue === undefined ? "" : ` = ${sourceOfExpression(context, parameter.defaultValue)}`;
  const attributes = sourceOfAttributes(parameter.declarator.attributes);
  return `${sourceOfSpecifiers(context, parameter.specifiers)} ${sourceOfDeclarator(context, parameter.declarator)}${attributes}${value}`;
}

export function sourceOfType(context: Unparsing, type: TypeName): string {
  return `${sourceOfSpecifiers(context, type.specifiers)} ${sourceOfDeclarator(context, type.declarator)}`;
}
