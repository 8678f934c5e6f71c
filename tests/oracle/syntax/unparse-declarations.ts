import type {
  Declaration,
  InitDeclarator,
  Place,
  Specifiers,
} from "../../../src-core/reader/syntax/nodes.ts";
import type { Token } from "../../../src-core/reader/tokens.ts";
import { sourceOfExpression } from "./unparse-expressions.ts";
import { sourceOfStatement } from "./unparse-statements.ts";
import {
  sourceOfAttributes,
  sourceOfDeclarator,
  sourceOfName,
  sourceOfParameter,
  sourceOfSpecifiers,
  sourceOfType,
} from "./unparse-types.ts";

/**
 * Writes trees as C or C++ again, so that a compiler can say whether they mean what the source meant. What the
 * tree does not hold (operands of inline assembly) and what was not understood is copied from the tokens.
 */
export interface Unparsing {
  readonly language: "c" | "c++";
  readonly tokens: readonly Token[];
  inTemplate: number;
}

export function verbatim(context: Unparsing, { first, end }: Place): string {
  return context.tokens
    .slice(first, end)
    .map((token) => token.text)
    .join(" ");
}

function sourceOfInit(context: Unparsing, init: InitDeclarator): string {
  const { initializer } = init;
  let value = "";
  if (initializer?.kind === "value") value = ` = ${sourceOfExpression(context, initializer.value)}`;
  else if (initializer !== undefined) {
    const list = initializer.arguments.map((each) => sourceOfExpression(context, each)).join(", ");
    value = initializer.braces ? ` { ${list} }` : `(${list})`;
  }
  const width = init.bitWidth === undefined ? "" : ` : ${sourceOfExpression(context, init.bitWidth)}`;
  const attributes = sourceOfAttributes(init.declarator.attributes);
  return `${sourceOfDeclarator(context, init.declarator)}${width} ${attributes}${value}`;
}

function sourceOfFunctionHead(
  context: Unparsing,
  specifiers: Specifiers,
  declaration: Extract<Declaration, { kind: "function" | "special-function" }>,
): string {
  const attributes = sourceOfAttributes(declaration.declarator.attributes);
  return `${attributes} ${sourceOfSpecifiers(context, specifiers)} ${sourceOfDeclarator(context, declaration.declarator)}`;
}

export function sourceOfDeclaration(context: Unparsing, declaration: Declaration): string {
  const members = (list: readonly Declaration[]): string =>
    list.map((each) => sourceOfDeclaration(context, each)).join("\n");
  switch (declaration.kind) {
    case "simple": {
      const list = declaration.declarators.map((init) => sourceOfInit(context, init)).join(", ");
      return `${sourceOfSpecifiers(context, declaration.specifiers)} ${list};`;
    }
    case "function": {
      const inits = declaration.memberInitializers.map((each) => {
        const args = each.arguments.map((argument) => sourceOfExpression(context, argument)).join(", ");
        return `${sourceOfName(context, each.name)}(${args})`;
      });
      const list = inits.length === 0 ? "" : ` : ${inits.join(", ")}`;
      const head = sourceOfFunctionHead(context, declaration.specifiers, declaration);
      return `${head}${list} ${sourceOfStatement(context, declaration.body)}`;
    }
    case "special-function": {
      const special = declaration.special === "pure" ? "0" : declaration.special;
      return `${sourceOfFunctionHead(context, declaration.specifiers, declaration)} = ${special};`;
    }
    case "namespace": {
      const name = declaration.name === undefined ? "" : sourceOfName(context, declaration.name);
      return `${declaration.inline ? "inline " : ""}namespace ${name} {\n${members(declaration.members)}\n}`;
    }
    case "linkage":
      return `extern "${declaration.language}" {\n${members(declaration.members)}\n}`;
    case "template":
      return sourceOfTemplate(context, declaration);
    case "alias":
      return `using ${declaration.name} = ${sourceOfType(context, declaration.type)};`;
    case "namespace-alias":
      return `namespace ${declaration.name} = ${sourceOfName(context, declaration.target)};`;
    case "using":
      return `using ${declaration.namespace ? "namespace " : ""}${sourceOfName(context, declaration.name)};`;
    case "access":
      return `${declaration.access}:`;
    case "static-assert": {
      const word = context.language === "c" ? "_Static_assert" : "static_assert";
      return `${word}(${sourceOfExpression(context, declaration.condition)}, "");`;
    }
    case "assembly":
    case "not-understood":
      return verbatim(context, declaration);
    case "empty":
      return ";";
  }
}

function sourceOfTemplate(
  context: Unparsing,
  declaration: Extract<Declaration, { kind: "template" }>,
): string {
  context.inTemplate += 1;
  const parameters = declaration.parameters.map((each) => {
    if (each.kind === "value") return sourceOfParameter(context, each.parameter);
    const value = each.defaultType === undefined ? "" : ` = ${sourceOfType(context, each.defaultType)}`;
    return `typename ${each.name ?? ""}${value}`;
  });
  const text = `template <${parameters.join(", ")}> ${sourceOfDeclaration(context, declaration.declaration)}`;
  context.inTemplate -= 1;
  return text;
}
