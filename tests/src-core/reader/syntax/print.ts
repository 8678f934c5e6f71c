import type {
  AssemblyOperand,
  Attribute,
  Block,
  Condition,
  Declaration,
  Declarator,
  DeclaratorPart,
  EnumSpecifier,
  Expression,
  InitDeclarator,
  Name,
  Parameter,
  RecordSpecifier,
  Specifiers,
  Statement,
  TemplateArgument,
  TemplateParameter,
  TypeName,
} from "../../../../src-core/reader/syntax/nodes.ts";

/**
 * Trees as s-expressions, for expected values written by hand. Types read from the inside out: `int *a[3]` is
 * `(array 3 (pointer int))`.
 */
const list = (...parts: readonly (string | undefined)[]): string =>
  `(${parts.filter((part) => part !== undefined && part !== "").join(" ")})`;

function printName(name: Name): string {
  const parts = name.parts.map((part) => {
    if (part.templateArguments === undefined) return part.text;
    return `${part.text}<${part.templateArguments.map(printArgument).join(", ")}>`;
  });
  return (name.global ? "::" : "") + parts.join("::");
}

function printArgument(argument: TemplateArgument): string {
  return argument.kind === "type" ? printType(argument.type) : printExpression(argument.value);
}

const printAttributes = (attributes: readonly Attribute[]): string =>
  attributes.map(({ name, arguments: args }) => `[${[name, ...args].join(" ")}]`).join(" ");

function printRecord(record: RecordSpecifier): string {
  const bases = record.bases.map((base) =>
    list("base", base.access, base.virtual ? "virtual" : "", printName(base.name)),
  );
  const members = record.members?.map(printDeclaration);
  if (members === undefined) return list(record.keyword, record.name && printName(record.name));
  return list(
    record.keyword,
    record.name === undefined ? "" : printName(record.name),
    printAttributes(record.attributes),
    ...bases,
    ...members,
    members.length === 0 ? "{}" : "",
  );
}

function printEnum(enumeration: EnumSpecifier): string {
  const enumerators = enumeration.enumerators?.map(({ name, value }) =>
    value === undefined ? name : list("=", name, printExpression(value)),
  );
  return list(
    enumeration.scoped ? "enum-class" : "enum",
    enumeration.name === undefined ? "" : printName(enumeration.name),
    enumeration.underlying === undefined ? "" : `: ${printType(enumeration.underlying)}`,
    ...(enumerators ?? []),
  );
}

function printSpecifiers(specifiers: Specifiers): string {
  const { type } = specifiers;
  let text: string;
  switch (type.kind) {
    case "words":
      text = type.words.join(" ");
      break;
    case "named":
      text = printName(type.name);
      break;
    case "record":
      text = printRecord(type.record);
      break;
    case "enum":
      text = printEnum(type.enumeration);
      break;
    case "typeof":
      text = list("typeof", printExpression(type.expression));
      break;
    case "auto":
      text = "auto";
      break;
    case "none":
      text = "";
      break;
  }
  const words = [
    ...specifiers.storage,
    specifiers.const ? "const" : "",
    specifiers.volatile ? "volatile" : "",
    text,
    printAttributes(specifiers.attributes),
  ];
  return words.filter((word) => word !== "").join(" ");
}

function wrap(base: string, part: DeclaratorPart): string {
  switch (part.kind) {
    case "pointer":
      return list("pointer", part.const ? "const" : "", part.volatile ? "volatile" : "", base);
    case "reference":
      return list(part.rvalue ? "rvalue-reference" : "reference", base);
    case "array":
      return list("array", part.length === undefined ? "?" : printExpression(part.length), base);
    case "function": {
      const parameters = part.parameters.map(printParameter);
      if (part.variadic) parameters.push("...");
      const result = part.trailingReturn === undefined ? base : printType(part.trailingReturn);
      return list("function", `[${parameters.join(", ")}]`, part.const ? "const" : "", result);
    }
  }
}

function printDeclared(specifiers: Specifiers, declarator: Declarator): string {
  let text = printSpecifiers(specifiers);
  for (const part of declarator.parts.toReversed()) text = wrap(text, part);
  const attributes = printAttributes(declarator.attributes);
  return attributes === "" ? text : `${text} ${attributes}`;
}

function printParameter(parameter: Parameter): string {
  const name = parameter.declarator.name;
  const type = printDeclared(parameter.specifiers, parameter.declarator);
  const value = parameter.defaultValue === undefined ? "" : ` = ${printExpression(parameter.defaultValue)}`;
  return `${name === undefined ? type : `${printName(name)}: ${type}`}${value}`;
}

function printType(type: TypeName): string {
  return printDeclared(type.specifiers, type.declarator);
}

function printInit(specifiers: Specifiers, init: InitDeclarator): string {
  const { declarator, initializer } = init;
  let value = "";
  if (initializer?.kind === "value") value = `= ${printExpression(initializer.value)}`;
  else if (initializer !== undefined) {
    value = list(initializer.braces ? "init{}" : "init()", ...initializer.arguments.map(printExpression));
  }
  return list(
    declarator.name === undefined ? "_" : printName(declarator.name),
    printDeclared(specifiers, declarator),
    init.bitWidth === undefined ? "" : `: ${printExpression(init.bitWidth)}`,
    value,
  );
}

function printTemplateParameter(parameter: TemplateParameter): string {
  if (parameter.kind === "value") return printParameter(parameter.parameter);
  const value = parameter.defaultType === undefined ? "" : ` = ${printType(parameter.defaultType)}`;
  return `type ${parameter.name ?? "_"}${value}`;
}

export function printDeclaration(declaration: Declaration): string {
  switch (declaration.kind) {
    case "simple":
      if (declaration.declarators.length === 0) return list("type", printSpecifiers(declaration.specifiers));
      return list(
        "declare",
        ...declaration.declarators.map((init) => printInit(declaration.specifiers, init)),
      );
    case "function": {
      const { declarator, memberInitializers } = declaration;
      return list(
        "define",
        declarator.name === undefined ? "_" : printName(declarator.name),
        printDeclared(declaration.specifiers, declarator),
        ...memberInitializers.map((each) =>
          list("member", printName(each.name), ...each.arguments.map(printExpression)),
        ),
        printStatement(declaration.body),
      );
    }
    case "special-function": {
      const { declarator, special } = declaration;
      const name = declarator.name === undefined ? "_" : printName(declarator.name);
      return list(special, name, printDeclared(declaration.specifiers, declarator));
    }
    case "namespace":
      return list(
        declaration.inline ? "inline-namespace" : "namespace",
        declaration.name && printName(declaration.name),
        ...declaration.members.map(printDeclaration),
      );
    case "linkage":
      return list("linkage", declaration.language, ...declaration.members.map(printDeclaration));
    case "template":
      return list(
        "template",
        `[${declaration.parameters.map(printTemplateParameter).join(", ")}]`,
        printDeclaration(declaration.declaration),
      );
    case "alias":
      return list("alias", declaration.name, printType(declaration.type));
    case "namespace-alias":
      return list("namespace-alias", declaration.name, printName(declaration.target));
    case "using":
      return list(declaration.namespace ? "using-namespace" : "using", printName(declaration.name));
    case "access":
      return list(declaration.access);
    case "static-assert":
      return list("static-assert", printExpression(declaration.condition));
    case "assembly":
      return list("asm", declaration.text);
    case "empty":
      return list("empty");
    case "not-understood":
      return list("not-understood");
  }
}

const printCondition = (condition: Condition): string =>
  condition.kind === "simple" ? printDeclaration(condition) : printExpression(condition);

const printBlock = (block: Block): string => list("block", ...block.statements.map(printStatement));

function printOperand({ name, constraint, value }: AssemblyOperand): string {
  return list(constraint, name, printExpression(value));
}

export function printStatement(statement: Statement): string {
  switch (statement.kind) {
    case "block":
      return printBlock(statement);
    case "expression":
      return printExpression(statement.expression);
    case "declaration":
      return printDeclaration(statement.declaration);
    case "if":
      return list(
        "if",
        statement.init && printStatement(statement.init),
        printCondition(statement.condition),
        printStatement(statement.then),
        statement.otherwise && printStatement(statement.otherwise),
      );
    case "while":
    case "switch":
      return list(statement.kind, printCondition(statement.condition), printStatement(statement.body));
    case "do":
      return list("do", printStatement(statement.body), printExpression(statement.condition));
    case "for":
      return list(
        "for",
        statement.init === undefined ? "_" : printStatement(statement.init),
        statement.condition === undefined ? "_" : printCondition(statement.condition),
        statement.step === undefined ? "_" : printExpression(statement.step),
        printStatement(statement.body),
      );
    case "range-for":
      return list(
        "range-for",
        statement.declarator.name && printName(statement.declarator.name),
        printDeclared(statement.specifiers, statement.declarator),
        printExpression(statement.range),
        printStatement(statement.body),
      );
    case "case":
      return list(
        "case",
        printExpression(statement.value),
        statement.upTo === undefined ? "" : `... ${printExpression(statement.upTo)}`,
        statement.body && printStatement(statement.body),
      );
    case "default":
      return list("default", statement.body && printStatement(statement.body));
    case "label":
      return list("label", statement.name, statement.body && printStatement(statement.body));
    case "goto":
      return list("goto", statement.name);
    case "return":
      return list("return", statement.value && printExpression(statement.value));
    case "assembly":
      return list(
        "asm",
        statement.text,
        statement.operands ? "operands" : "",
        ...[...statement.outputs, ...statement.inputs].map(printOperand),
      );
    case "break":
    case "continue":
    case "empty":
    case "not-understood":
      return list(statement.kind);
  }
}

export function printExpression(expression: Expression): string {
  switch (expression.kind) {
    case "number":
    case "character":
      return expression.text;
    case "string":
      return expression.parts.length === 1
        ? (expression.parts[0] ?? "")
        : list("string", ...expression.parts);
    case "boolean":
      return String(expression.value);
    case "nullptr":
    case "this":
      return expression.kind;
    case "name":
      return printName(expression.name);
    case "unary":
      return list(`${expression.operator}_`, printExpression(expression.operand));
    case "update": {
      const { operator, position, operand } = expression;
      return list(position === "prefix" ? `${operator}_` : `_${operator}`, printExpression(operand));
    }
    case "binary":
      return list(expression.operator, printExpression(expression.left), printExpression(expression.right));
    case "assign":
      return list(expression.operator, printExpression(expression.target), printExpression(expression.value));
    case "conditional":
      return list(
        "?",
        printExpression(expression.condition),
        expression.then === undefined ? "_" : printExpression(expression.then),
        printExpression(expression.otherwise),
      );
    case "call":
      return list("call", printExpression(expression.callee), ...expression.arguments.map(printExpression));
    case "index":
      return list("index", printExpression(expression.array), printExpression(expression.index));
    case "member":
      return list(
        expression.arrow ? "->" : ".",
        printExpression(expression.object),
        printName(expression.member),
      );
    case "cast": {
      const style = expression.style === "c" ? "cast" : expression.style;
      return list(style, printType(expression.type), ...expression.operands.map(printExpression));
    }
    case "sizeof-type":
      return list("sizeof-type", printType(expression.type));
    case "sizeof-value":
      return list("sizeof", printExpression(expression.operand));
    case "alignof":
      return list("alignof", printType(expression.type));
    case "offsetof":
      return list("offsetof", printType(expression.type), expression.member);
    case "next-argument":
      return list("next-argument", printExpression(expression.list), printType(expression.type));
    case "pack-length":
      return list("sizeof...", expression.name);
    case "expansion":
      return list("expansion", printExpression(expression.pattern));
    case "pack-element":
      return list("pack-element", printExpression(expression.pattern), String(expression.index));
    case "list":
      return list("list", ...expression.entries.map(printEntry));
    case "compound":
      return list("compound", printType(expression.type), printExpression(expression.list));
    case "lambda":
      return list(
        "lambda",
        `[${[
          ...(expression.captureDefault === undefined ? [] : [expression.captureDefault]),
          ...expression.captures.map(
            ({ name, reference, value }) =>
              `${reference ? "&" : ""}${name}${value === undefined ? "" : ` = ${printExpression(value)}`}`,
          ),
        ].join(", ")}]`,
        ...expression.declarator.parts.map((part) => wrap("_", part)),
        printBlock(expression.body),
      );
    case "new":
      return list(
        "new",
        expression.placement === undefined ? "" : `at ${printExpression(expression.placement)}`,
        printType(expression.type),
        expression.length === undefined ? "" : `[${printExpression(expression.length)}]`,
        expression.form === "braces" ? "braces" : "",
        ...expression.arguments.map(printExpression),
      );
    case "delete":
      return list(expression.array ? "delete[]" : "delete", printExpression(expression.operand));
    case "statement-value":
      return list("statement-value", printBlock(expression.body));
    case "not-understood":
      return list("not-understood");
  }
}

function printEntry(entry: Extract<Expression, { kind: "list" }>["entries"][number]): string {
  const value = printExpression(entry.value);
  if (entry.designators.length === 0) return value;
  const path = entry.designators.map((designator) => {
    if (designator.kind === "field") return `.${designator.name}`;
    const upTo = designator.upTo === undefined ? "" : ` ... ${printExpression(designator.upTo)}`;
    return `[${printExpression(designator.index)}${upTo}]`;
  });
  return list("=", path.join(""), value);
}
