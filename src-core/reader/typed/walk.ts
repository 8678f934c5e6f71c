import { isStandIn } from "../tokens.ts";
import type {
  FunctionDefinition,
  TypedExpression,
  TypedInitializer,
  TypedStatement,
  TypedUnit,
} from "./nodes.ts";

/** What a walk through the typed tree calls; each answers whether the walk goes into the node. */
export interface Visitor {
  expression?(expression: TypedExpression): boolean;
  statement?(statement: TypedStatement): boolean;
}

const present = <Part>(...parts: readonly (Part | undefined)[]): Part[] =>
  parts.filter((part) => part !== undefined);

/** Most nodes are leaves: they share one empty list. */
const none: readonly never[] = [];

/** Direct operands, in the order they are written; a lambda's body and inner statements are not among them. */
export function operandsOf(expression: TypedExpression): readonly TypedExpression[] {
  switch (expression.kind) {
    case "integer":
    case "floating":
    case "string":
    case "variable":
    case "function":
    case "enumerator":
    case "this":
    case "further-arguments":
    case "statement-value":
      return none;
    case "member":
      return [expression.object];
    case "dereference":
    case "address":
    case "negate":
    case "plus":
    case "complement":
    case "not":
    case "update":
    case "convert":
    case "delete":
    case "next-argument":
      return [expression.operand];
    case "arithmetic":
    case "pointer-difference":
    case "compare":
    case "logical":
    case "comma":
      return [expression.left, expression.right];
    case "pointer-offset":
      return [expression.pointer, expression.offset];
    case "assign":
    case "compound-assign":
      return [expression.target, expression.value];
    case "conditional":
      return [expression.condition, expression.then, expression.otherwise];
    case "call":
      return [expression.callee, ...expression.arguments];
    case "method-call":
      return [expression.object, ...expression.arguments];
    case "index":
      return [expression.array, expression.index];
    case "construct":
      return expressionsOf(expression.initializer);
    case "lambda":
      return expression.captures.map((capture) => capture.source);
    case "new":
      return [
        ...present(expression.placement, expression.length),
        ...(expression.initializer === undefined ? [] : expressionsOf(expression.initializer)),
      ];
    case "unresolved":
      return expression.operands;
  }
}

/** The expressions an initialiser is made of, inner lists included. */
export function expressionsOf(initializer: TypedInitializer): readonly TypedExpression[] {
  switch (initializer.kind) {
    case "value":
      return [initializer.value];
    case "aggregate":
      return initializer.entries.flatMap((entry) => expressionsOf(entry.initializer));
    case "constructor":
      return initializer.arguments;
  }
}

/** Walks an expression, itself first; statements in it and bodies of lambdas are walked too. */
export function walkExpression(expression: TypedExpression, visitor: Visitor): void {
  if (visitor.expression?.(expression) === false) return;
  // Nearly all of a tree is of the kinds that come first: they are gone into without making a list.
  switch (expression.kind) {
    case "integer":
    case "variable":
    case "function":
    case "enumerator":
      return;
    case "convert":
    case "dereference":
    case "complement":
    case "not":
      walkExpression(expression.operand, visitor);
      return;
    case "member":
      walkExpression(expression.object, visitor);
      return;
    case "arithmetic":
    case "compare":
    case "logical":
      walkExpression(expression.left, visitor);
      walkExpression(expression.right, visitor);
      return;
    case "assign":
    case "compound-assign":
      walkExpression(expression.target, visitor);
      walkExpression(expression.value, visitor);
      return;
    case "index":
      walkExpression(expression.array, visitor);
      walkExpression(expression.index, visitor);
      return;
    case "call":
      walkExpression(expression.callee, visitor);
      for (const argument of expression.arguments) walkExpression(argument, visitor);
      return;
    case "statement-value":
      walkStatement(expression.body, visitor);
      return;
    case "lambda":
      for (const operand of operandsOf(expression)) walkExpression(operand, visitor);
      if (expression.function.definition !== undefined) {
        walkStatement(expression.function.definition.body, visitor);
      }
      return;
    default:
      for (const operand of operandsOf(expression)) walkExpression(operand, visitor);
  }
}

/** Expressions that stand directly in a statement, in the order they are written. */
export function expressionsIn(statement: TypedStatement): readonly TypedExpression[] {
  switch (statement.kind) {
    case "expression":
      return [statement.expression];
    case "variables":
      return statement.variables.flatMap(({ initializer }) =>
        initializer === undefined ? [] : expressionsOf(initializer),
      );
    case "if":
    case "while":
    case "do":
    case "switch":
      return [statement.condition];
    case "for":
      return present(statement.condition, statement.step);
    case "range-for":
      return [statement.range];
    case "assembly":
      return [...statement.outputs, ...statement.inputs].map(({ value }) => value);
    case "case":
      return present(statement.value, statement.upTo);
    case "return":
      return present(statement.value);
    case "block":
    case "default":
    case "label":
    case "goto":
    case "break":
    case "continue":
    case "empty":
    case "not-understood":
      return none;
  }
}

/** Statements that stand directly in a statement. */
export function statementsIn(statement: TypedStatement): readonly TypedStatement[] {
  switch (statement.kind) {
    case "block":
      return statement.statements;
    case "if":
      return present(statement.init, statement.then, statement.otherwise);
    case "while":
      return present(statement.declared, statement.body);
    case "for":
      return present(statement.init, statement.body);
    case "do":
    case "range-for":
    case "switch":
      return [statement.body];
    case "case":
    case "default":
    case "label":
      return present(statement.body);
    case "expression":
    case "variables":
    case "return":
    case "goto":
    case "break":
    case "continue":
    case "assembly":
    case "empty":
    case "not-understood":
      return none;
  }
}

/** Walks a statement, itself first, with the expressions in it. */
export function walkStatement(statement: TypedStatement, visitor: Visitor): void {
  if (visitor.statement?.(statement) === false) return;
  switch (statement.kind) {
    case "block":
      for (const inner of statement.statements) walkStatement(inner, visitor);
      return;
    case "expression":
      walkExpression(statement.expression, visitor);
      return;
    default:
      for (const expression of expressionsIn(statement)) walkExpression(expression, visitor);
      for (const inner of statementsIn(statement)) walkStatement(inner, visitor);
  }
}

/** An initialiser at file level, or a function with its body. */
export type PieceOfCode = TypedInitializer | FunctionDefinition;

/** A unit's own code, without what stand-in headers hold. A piece stays the same object as long as it is not changed. */
export function* piecesOf(unit: TypedUnit): Generator<PieceOfCode> {
  for (const { initializer, at } of unit.variables) {
    if (initializer !== undefined && !isStandIn(at.first.file)) yield initializer;
  }
  for (const symbol of unit.functions) {
    const definition = symbol.standIn ? undefined : symbol.definition;
    if (definition !== undefined) yield definition;
  }
}

export function walkPiece(piece: PieceOfCode, visitor: Visitor): void {
  const initializers =
    "kind" in piece ? [piece] : piece.memberInitializers.map(({ initializer }) => initializer);
  for (const initializer of initializers) {
    for (const expression of expressionsOf(initializer)) walkExpression(expression, visitor);
  }
  if (!("kind" in piece)) walkStatement(piece.body, visitor);
}

/** Walks initialisers of variables at file level and bodies of functions; what stand-in headers hold is left out. */
export function walkUnit(unit: TypedUnit, visitor: Visitor): void {
  for (const piece of piecesOf(unit)) walkPiece(piece, visitor);
}
