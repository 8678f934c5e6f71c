import type { Condition, Statement } from "../../../src-core/reader/syntax/nodes.ts";
import { sourceOfDeclaration, type Unparsing, verbatim } from "./unparse-declarations.ts";
import { sourceOfExpression } from "./unparse-expressions.ts";
import { sourceOfDeclarator, sourceOfSpecifiers } from "./unparse-types.ts";

function sourceOfCondition(context: Unparsing, condition: Condition): string {
  if (condition.kind !== "simple") return sourceOfExpression(context, condition);
  return sourceOfDeclaration(context, condition).replace(/;$/, "");
}

/** Braces around what a statement governs, and where the tree has them, so that no `else` goes astray. */
function governed(context: Unparsing, statement: Statement): string {
  const text = sourceOfStatement(context, statement);
  return statement.kind === "block" ? text : `{ ${text} }`;
}

export function sourceOfStatement(context: Unparsing, statement: Statement): string {
  const of = (each: Statement): string => sourceOfStatement(context, each);
  switch (statement.kind) {
    case "block":
      return `{\n${statement.statements.map(of).join("\n")}\n}`;
    case "expression":
      return `${sourceOfExpression(context, statement.expression)};`;
    case "declaration":
      return sourceOfDeclaration(context, statement.declaration);
    case "if": {
      const init = statement.init === undefined ? "" : of(statement.init);
      const otherwise =
        statement.otherwise === undefined ? "" : ` else ${governed(context, statement.otherwise)}`;
      return `if (${init}${sourceOfCondition(context, statement.condition)}) ${governed(context, statement.then)}${otherwise}`;
    }
    case "while":
      return `while (${sourceOfCondition(context, statement.condition)}) ${governed(context, statement.body)}`;
    case "switch":
      return `switch (${sourceOfCondition(context, statement.condition)}) ${governed(context, statement.body)}`;
    case "do":
      return `do ${governed(context, statement.body)} while (${sourceOfExpression(context, statement.condition)});`;
    case "for": {
      const init = statement.init === undefined ? ";" : of(statement.init);
      const condition =
        statement.condition === undefined ? "" : sourceOfCondition(context, statement.condition);
      const step = statement.step === undefined ? "" : sourceOfExpression(context, statement.step);
      return `for (${init} ${condition}; ${step}) ${governed(context, statement.body)}`;
    }
    case "range-for": {
      const type = sourceOfSpecifiers(context, statement.specifiers);
      const declarator = sourceOfDeclarator(context, statement.declarator);
      return `for (${type} ${declarator} : ${sourceOfExpression(context, statement.range)}) ${governed(context, statement.body)}`;
    }
    case "case": {
      const upTo = statement.upTo === undefined ? "" : ` ... ${sourceOfExpression(context, statement.upTo)}`;
      const body = statement.body === undefined ? ";" : of(statement.body);
      return `case ${sourceOfExpression(context, statement.value)}${upTo}: ${body}`;
    }
    case "default":
      return `default: ${statement.body === undefined ? ";" : of(statement.body)}`;
    case "label":
      return `${statement.name}: ${statement.body === undefined ? ";" : of(statement.body)}`;
    case "goto":
      return `goto ${statement.name};`;
    case "break":
    case "continue":
      return `${statement.kind};`;
    case "return":
      return `return ${statement.value === undefined ? "" : sourceOfExpression(context, statement.value)};`;
    case "empty":
      return ";";
    case "assembly":
    case "not-understood":
      return verbatim(context, statement);
  }
}
