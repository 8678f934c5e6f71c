import type {
  TypedBlock,
  TypedExpression,
  TypedInitializer,
  TypedStatement,
} from "../../reader/typed/nodes.ts";

/** What a node of the typed tree is made of, in the order in which it is evaluated where that is fixed. */
export type Part =
  | { readonly kind: "expression"; readonly expression: TypedExpression }
  | { readonly kind: "statement"; readonly statement: TypedStatement };

/** The direct parts of an expression; the body of a lambda is none of them, it runs when called. */
export function partsOfExpression(expression: TypedExpression): readonly Part[] {
  switch (expression.kind) {
    case "integer":
    case "floating":
    case "string":
    case "variable":
    case "function":
    case "enumerator":
    case "this":
      return [];
    case "member":
      return expressions(expression.object);
    case "dereference":
    case "address":
    case "negate":
    case "plus":
    case "complement":
    case "not":
    case "update":
    case "convert":
    case "delete":
      return expressions(expression.operand);
    case "arithmetic":
    case "pointer-difference":
    case "compare":
    case "logical":
    case "comma":
      return expressions(expression.left, expression.right);
    case "pointer-offset":
      return expressions(expression.pointer, expression.offset);
    case "assign":
    case "compound-assign":
      return expressions(expression.target, expression.value);
    case "conditional":
      return expressions(expression.condition, expression.then, expression.otherwise);
    case "call":
      return expressions(expression.callee, ...expression.arguments);
    case "method-call":
      return expressions(expression.object, ...expression.arguments);
    case "index":
      return expressions(expression.array, expression.index);
    case "construct":
      return partsOfInitializer(expression.initializer);
    case "lambda":
      return expressions(...expression.captures.map((capture) => capture.source));
    case "new":
      return [...expressions(expression.length), ...partsOfInitializer(expression.initializer)];
    case "statement-value":
      return statements(expression.body);
    case "unresolved":
      return expressions(...expression.operands);
  }
}

/** The direct parts of a statement. */
export function partsOfStatement(statement: TypedStatement): readonly Part[] {
  switch (statement.kind) {
    case "block":
      return statements(...statement.statements);
    case "expression":
      return expressions(statement.expression);
    case "variables":
      return statement.variables.flatMap((variable) => partsOfInitializer(variable.initializer));
    case "if":
      return [
        ...statements(statement.init),
        ...expressions(statement.condition),
        ...statements(statement.then, statement.otherwise),
      ];
    case "while":
    case "switch":
      return [...expressions(statement.condition), ...statements(statement.body)];
    case "do":
      return [...statements(statement.body), ...expressions(statement.condition)];
    case "for":
      return [
        ...statements(statement.init),
        ...expressions(statement.condition),
        ...statements(statement.body),
        ...expressions(statement.step),
      ];
    case "range-for":
      return [...expressions(statement.range), ...statements(statement.body)];
    case "case":
      return [...expressions(statement.value, statement.upTo), ...statements(statement.body)];
    case "default":
    case "label":
      return statements(statement.body);
    case "return":
      return expressions(statement.value);
    case "goto":
    case "break":
    case "continue":
    case "assembly":
    case "empty":
    case "not-understood":
      return [];
  }
}

export function partsOfInitializer(initializer: TypedInitializer | undefined): readonly Part[] {
  switch (initializer?.kind) {
    case undefined:
      return [];
    case "value":
      return expressions(initializer.value);
    case "aggregate":
      return initializer.entries.flatMap((entry) => partsOfInitializer(entry.initializer));
    case "constructor":
      return expressions(...initializer.arguments);
  }
}

export function partsOf(part: Part): readonly Part[] {
  return part.kind === "expression" ? partsOfExpression(part.expression) : partsOfStatement(part.statement);
}

/** Every expression in `part` and below, outer ones first. */
export function* expressionsIn(part: Part): Generator<TypedExpression> {
  if (part.kind === "expression") yield part.expression;
  for (const inner of partsOf(part)) yield* expressionsIn(inner);
}

export function* expressionsInBlock(body: TypedBlock): Generator<TypedExpression> {
  yield* expressionsIn({ kind: "statement", statement: body });
}

function expressions(...list: readonly (TypedExpression | undefined)[]): readonly Part[] {
  return list.flatMap((expression) => (expression ? [{ kind: "expression" as const, expression }] : []));
}

function statements(...list: readonly (TypedStatement | undefined)[]): readonly Part[] {
  return list.flatMap((statement) => (statement ? [{ kind: "statement" as const, statement }] : []));
}
