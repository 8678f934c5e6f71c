import type { TypedExpression, TypedInitializer, TypedStatement } from "../../reader/typed/nodes.ts";

/** Calls `seen` for every expression in a statement, those of initialisers and conditions included, outer first. */
export function visitStatement(statement: TypedStatement, seen: (expression: TypedExpression) => void): void {
  const inner = (part: TypedStatement | undefined): void => {
    if (part !== undefined) visitStatement(part, seen);
  };
  const value = (part: TypedExpression | undefined): void => {
    if (part !== undefined) visitExpression(part, seen);
  };
  switch (statement.kind) {
    case "block":
      for (const part of statement.statements) visitStatement(part, seen);
      return;
    case "expression":
      return value(statement.expression);
    case "variables":
      for (const variable of statement.variables) {
        if (variable.initializer !== undefined) visitInitializer(variable.initializer, seen);
      }
      return;
    case "if":
      inner(statement.init);
      value(statement.condition);
      inner(statement.then);
      return inner(statement.otherwise);
    case "while":
      inner(statement.declared);
      value(statement.condition);
      return inner(statement.body);
    case "do":
      inner(statement.body);
      return value(statement.condition);
    case "for":
      inner(statement.init);
      value(statement.condition);
      value(statement.step);
      return inner(statement.body);
    case "range-for":
      value(statement.range);
      return inner(statement.body);
    case "switch":
      value(statement.condition);
      return inner(statement.body);
    case "case":
      value(statement.value);
      value(statement.upTo);
      return inner(statement.body);
    case "default":
    case "label":
      return inner(statement.body);
    case "return":
      return value(statement.value);
    case "goto":
    case "break":
    case "continue":
    case "assembly":
    case "empty":
    case "not-understood":
      return;
  }
}

export function visitInitializer(
  initializer: TypedInitializer,
  seen: (expression: TypedExpression) => void,
): void {
  switch (initializer.kind) {
    case "value":
      return visitExpression(initializer.value, seen);
    case "aggregate":
      for (const entry of initializer.entries) visitInitializer(entry.initializer, seen);
      return;
    case "constructor":
      for (const argument of initializer.arguments) visitExpression(argument, seen);
      return;
  }
}

export function visitExpression(
  expression: TypedExpression,
  seen: (expression: TypedExpression) => void,
): void {
  seen(expression);
  switch (expression.kind) {
    case "integer":
    case "floating":
    case "string":
    case "variable":
    case "function":
    case "enumerator":
    case "this":
      return;
    case "member":
      return visitExpression(expression.object, seen);
    case "dereference":
    case "address":
    case "negate":
    case "plus":
    case "complement":
    case "not":
    case "update":
    case "convert":
    case "delete":
      return visitExpression(expression.operand, seen);
    case "arithmetic":
    case "pointer-difference":
    case "compare":
    case "logical":
    case "comma":
      visitExpression(expression.left, seen);
      return visitExpression(expression.right, seen);
    case "pointer-offset":
      visitExpression(expression.pointer, seen);
      return visitExpression(expression.offset, seen);
    case "assign":
    case "compound-assign":
      visitExpression(expression.target, seen);
      return visitExpression(expression.value, seen);
    case "conditional":
      visitExpression(expression.condition, seen);
      visitExpression(expression.then, seen);
      return visitExpression(expression.otherwise, seen);
    case "call":
      visitExpression(expression.callee, seen);
      for (const argument of expression.arguments) visitExpression(argument, seen);
      return;
    case "method-call":
      visitExpression(expression.object, seen);
      for (const argument of expression.arguments) visitExpression(argument, seen);
      return;
    case "index":
      visitExpression(expression.array, seen);
      return visitExpression(expression.index, seen);
    case "construct":
      return visitInitializer(expression.initializer, seen);
    case "lambda":
      for (const capture of expression.captures) visitExpression(capture.source, seen);
      return;
    case "new":
      if (expression.initializer !== undefined) visitInitializer(expression.initializer, seen);
      if (expression.length !== undefined) visitExpression(expression.length, seen);
      return;
    case "statement-value":
      return visitStatement(expression.body, seen);
    case "unresolved":
      for (const operand of expression.operands) visitExpression(operand, seen);
      return;
  }
}
