import type { Expression, ListEntry } from "../../../src-core/reader/syntax/nodes.ts";
import { type Unparsing, verbatim } from "./unparse-declarations.ts";
import { sourceOfStatement } from "./unparse-statements.ts";
import { sourceOfName, sourceOfParameters, sourceOfType } from "./unparse-types.ts";

const brackets = { none: ["", ""], parentheses: ["(", ")"], braces: ["{", "}"] } as const;

/** C or C++ in which parentheses say how the tree groups. */
export function sourceOfExpression(context: Unparsing, expression: Expression): string {
  const of = (each: Expression): string => sourceOfExpression(context, each);
  const all = (each: readonly Expression[]): string => each.map(of).join(", ");
  switch (expression.kind) {
    case "number":
    case "character":
      return expression.text;
    case "string":
      return expression.parts.join(" ");
    case "boolean":
      return String(expression.value);
    case "nullptr":
    case "this":
      return expression.kind;
    case "name":
      return sourceOfName(context, expression.name);
    case "unary":
      return `(${expression.operator} ${of(expression.operand)})`;
    case "update":
      return expression.position === "prefix"
        ? `(${expression.operator} ${of(expression.operand)})`
        : `(${of(expression.operand)} ${expression.operator})`;
    case "binary":
      return `(${of(expression.left)} ${expression.operator} ${of(expression.right)})`;
    case "assign":
      return `(${of(expression.target)} ${expression.operator} ${of(expression.value)})`;
    case "conditional":
      return `(${of(expression.condition)} ? ${expression.then === undefined ? "" : of(expression.then)} : ${of(expression.otherwise)})`;
    case "call":
      return `${of(expression.callee)}(${all(expression.arguments)})`;
    case "index":
      return `${of(expression.array)}[${of(expression.index)}]`;
    case "member":
      return `(${of(expression.object)}${expression.arrow ? "->" : "."}${sourceOfName(context, expression.member)})`;
    case "cast":
      if (expression.style === "c")
        return `((${sourceOfType(context, expression.type)}) ${all(expression.operands)})`;
      if (expression.style === "functional") {
        return `${sourceOfType(context, expression.type)}(${all(expression.operands)})`;
      }
      return `${expression.style}<${sourceOfType(context, expression.type)} >(${all(expression.operands)})`;
    case "sizeof-type":
      return `sizeof(${sourceOfType(context, expression.type)})`;
    case "sizeof-value":
      return `sizeof(${of(expression.operand)})`;
    case "alignof":
      return `__alignof__(${sourceOfType(context, expression.type)})`;
    case "offsetof":
      return `__builtin_offsetof(${sourceOfType(context, expression.type)}, ${expression.member})`;
    case "next-argument":
      return `__builtin_va_arg(${of(expression.list)}, ${sourceOfType(context, expression.type)})`;
    case "pack-length":
      return `sizeof...(${expression.name})`;
    case "expansion":
      return `${of(expression.pattern)}...`;
    case "pack-element":
      return of(expression.pattern);
    case "list":
      return `{ ${expression.entries.map((entry) => sourceOfEntry(context, entry)).join(", ")} }`;
    case "compound": {
      const type = sourceOfType(context, expression.type);
      return context.language === "c"
        ? `((${type}) ${of(expression.list)})`
        : `${type} ${of(expression.list)}`;
    }
    case "lambda":
      return sourceOfLambda(context, expression);
    case "new": {
      const length = expression.length === undefined ? "" : `[${of(expression.length)}]`;
      const [open, close] = brackets[expression.form];
      const args = `${open}${all(expression.arguments)}${close}`;
      const place = expression.placement === undefined ? "" : `(${of(expression.placement)}) `;
      return `(new ${place}${sourceOfType(context, expression.type)}${length}${args})`;
    }
    case "delete":
      return `(delete${expression.array ? "[]" : ""} ${of(expression.operand)})`;
    case "statement-value":
      return `(${sourceOfStatement(context, expression.body)})`;
    case "not-understood":
      return verbatim(context, expression);
  }
}

function sourceOfEntry(context: Unparsing, entry: ListEntry): string {
  const value = sourceOfExpression(context, entry.value);
  if (entry.designators.length === 0) return value;
  const path = entry.designators.map((each) => {
    if (each.kind === "field") return `.${each.name}`;
    const upTo = each.upTo === undefined ? "" : ` ... ${sourceOfExpression(context, each.upTo)}`;
    return `[${sourceOfExpression(context, each.index)}${upTo}]`;
  });
  return `${path.join("")} = ${value}`;
}

function sourceOfLambda(context: Unparsing, lambda: Extract<Expression, { kind: "lambda" }>): string {
  const captures = lambda.captures.map(({ name, reference, value }) => {
    const initial = value === undefined ? "" : ` = ${sourceOfExpression(context, value)}`;
    return `${reference ? "&" : ""}${name}${initial}`;
  });
  if (lambda.captureDefault !== undefined) captures.unshift(lambda.captureDefault === "copy" ? "=" : "&");
  const part = lambda.declarator.parts[0];
  const parameters = part?.kind === "function" ? `(${sourceOfParameters(context, part)})` : "";
  const result =
    part?.kind === "function" && part.trailingReturn !== undefined
      ? ` -> ${sourceOfType(context, part.trailingReturn)}`
      : "";
  return `[${captures.join(", ")}]${parameters}${result} ${sourceOfStatement(context, lambda.body)}`;
}
