import { cleanUpOf } from "../../reader/typed/clean-up.ts";
import type {
  FunctionDefinition,
  TypedExpression,
  TypedInitializer,
  Variable,
} from "../../reader/typed/nodes.ts";
import { expressionsOf, walkExpression, walkStatement } from "../../reader/typed/walk.ts";
import { calledType } from "../../reader/types/derive.ts";
import type { Type } from "../../reader/types/types.ts";

/**
 * Variables of a function that must have an address: those whose address is taken, in so many words or by a
 * reference. All other scalars are variables of the generated code.
 */
export function addressed(definition: FunctionDefinition): ReadonlySet<Variable> {
  const found = new Set<Variable>();
  const bind = (expression: TypedExpression): void => {
    if (!expression.lvalue) return;
    switch (expression.kind) {
      case "variable":
        found.add(expression.variable);
        return;
      case "convert":
        bind(expression.operand);
        return;
      case "comma":
        bind(expression.right);
        return;
      case "conditional":
        bind(expression.then);
        bind(expression.otherwise);
        return;
      case "assign":
      case "compound-assign":
        bind(expression.target);
        return;
      case "update":
        bind(expression.operand);
        return;
      default:
        return;
    }
  };
  const bindTo = (types: readonly Type[], given: readonly TypedExpression[]): void => {
    for (const [index, argument] of given.entries()) {
      if (types[index]?.kind === "reference") bind(argument);
    }
  };
  const visitInitializer = (initializer: TypedInitializer): void => {
    if (initializer.kind === "value") {
      // A field or a variable that is a reference: which of both the tree does not say here.
      bind(initializer.value);
      return;
    }
    if (initializer.kind === "aggregate") {
      for (const { target, initializer: inner } of initializer.entries) {
        if ("name" in target && target.type.kind === "reference") visitInitializer(inner);
      }
      return;
    }
    bindTo(initializer.constructor?.type.parameters ?? [], initializer.arguments);
  };
  const visitVariables = (variables: readonly Variable[]): void => {
    for (const variable of variables) {
      const { type, initializer } = variable;
      if (cleanUpOf(variable) !== undefined) found.add(variable);
      if (initializer === undefined) continue;
      if (type.kind === "reference" || initializer.kind !== "value") visitInitializer(initializer);
    }
  };
  const visitor = {
    expression(expression: TypedExpression): boolean {
      switch (expression.kind) {
        case "address":
          bind(expression.operand);
          break;
        case "convert":
          if (expression.lvalue) bind(expression.operand);
          break;
        case "call":
          bindTo(calledType(expression.callee.type)?.parameters ?? [], expression.arguments);
          break;
        case "method-call":
          bind(expression.object);
          bindTo(expression.method.type.parameters, expression.arguments);
          break;
        case "construct":
          if (expression.initializer.kind !== "value") visitInitializer(expression.initializer);
          break;
        case "new":
          if (expression.initializer?.kind === "constructor") visitInitializer(expression.initializer);
          break;
        case "lambda":
          for (const { variable, reference } of expression.captures) if (reference) found.add(variable);
          break;
        default:
          break;
      }
      // Lvalues that are read as one of several need one form for all.
      if (expression.lvalue && (expression.kind === "conditional" || expression.kind === "comma"))
        bind(expression);
      return true;
    },
    statement(statement: Parameters<typeof walkStatement>[0]): boolean {
      if (statement.kind === "variables") visitVariables(statement.variables);
      if (statement.kind === "range-for" && statement.iteration !== undefined) {
        const { variables, condition, step } = statement.iteration;
        visitVariables([...variables, statement.variable]);
        for (const expression of [...[...variables, statement.variable].flatMap(valuesOf), condition, step])
          walkExpression(expression, visitor);
      }
      if (statement.kind === "return" && statement.value?.lvalue === true) bind(statement.value);
      return true;
    },
  };
  for (const { target, initializer } of definition.memberInitializers) {
    if (target !== undefined && "type" in target && target.type.kind === "reference")
      visitInitializer(initializer);
    else if (initializer.kind === "constructor") visitInitializer(initializer);
    for (const expression of argumentsOf(initializer)) walkExpression(expression, visitor);
  }
  walkStatement(definition.body, visitor);
  return found;
}

const valuesOf = ({ initializer }: Variable): readonly TypedExpression[] =>
  initializer === undefined ? [] : expressionsOf(initializer);

function argumentsOf(initializer: TypedInitializer): readonly TypedExpression[] {
  if (initializer.kind === "value") return [initializer.value];
  return initializer.kind === "constructor" ? initializer.arguments : [];
}
