import type { RawNode } from "../grammar/raw-nodes.ts";
import type { Expression } from "../nodes.ts";
import { callOf, isType } from "./calls.ts";
import { alignOf, castOf, compoundOf, deleteOf, newOf, offsetOf, sizeOf } from "./casts.ts";
import { emptyBlock } from "./functions.ts";
import { listOf } from "./initializers.ts";
import { lambdaOf } from "./lambdas.ts";
import { literalOf } from "./literals.ts";
import { nameOf } from "./names.ts";
import { assignOf, binaryOf, conditionalOf, indexOf, memberOf, unaryOf, updateOf } from "./operators.ts";
import { childOf, type Reading } from "./reading.ts";
import { blockOf } from "./statements.ts";

export function notUnderstoodExpression(reading: Reading, node: RawNode, what: string): Expression {
  reading.note(node.first, node.end, `This ${what} is not understood.`);
  return { kind: "not-understood", first: node.first, end: node.end, what: `${what} not understood` };
}

/** An expression from the grammar's node; parentheses leave no node of their own. */
export function expressionOf(reading: Reading, node: RawNode): Expression {
  return reading.deeper(
    () => converted(reading, node),
    () => notUnderstoodExpression(reading, node, "deeply nested expression"),
  );
}

function converted(reading: Reading, node: RawNode): Expression {
  const { first, end } = node;
  switch (node.type) {
    case "number_literal":
    case "char_literal":
    case "string_literal":
    case "concatenated_string":
    case "user_defined_literal":
    case "raw_string_literal":
    case "true":
    case "false":
    case "null":
    case "this":
      return literalOf(reading, node);
    case "identifier":
    case "qualified_identifier":
    case "template_function":
    case "type_identifier":
    case "field_identifier":
    case "operator_name":
    case "primitive_type":
      return { kind: "name", first, end, name: nameOf(reading, node) };
    case "parenthesized_expression":
      return parenthesized(reading, node);
    case "comma_expression":
    case "binary_expression":
      return binaryOf(reading, node);
    case "unary_expression":
    case "pointer_expression":
      return unaryOf(reading, node);
    case "update_expression":
      return updateOf(reading, node);
    case "assignment_expression":
      return assignOf(reading, node);
    case "conditional_expression":
      return conditionalOf(reading, node);
    case "call_expression":
      return callOf(reading, node);
    case "subscript_expression":
      return indexOf(reading, node);
    case "field_expression":
      return memberOf(reading, node);
    case "cast_expression":
      return castOf(reading, node);
    case "parameter_pack_expansion": {
      const pattern = childOf(node, "pattern");
      if (pattern === undefined) return notUnderstoodExpression(reading, node, "expansion");
      return { kind: "expansion", first, end, pattern: expressionOf(reading, pattern) };
    }
    case "sizeof_expression":
      return sizeOf(reading, node);
    case "alignof_expression":
      return alignOf(reading, node);
    case "offsetof_expression":
      return offsetOf(reading, node);
    case "initializer_list":
      return listOf(reading, node);
    case "compound_literal_expression":
      return compoundOf(reading, node);
    case "lambda_expression":
      return lambdaOf(reading, node);
    case "new_expression":
      return newOf(reading, node);
    case "delete_expression":
      return deleteOf(reading, node);
    case "type_descriptor":
      return typeAsValue(reading, node);
    default:
      return notUnderstoodExpression(reading, node, "expression");
  }
}

function parenthesized(reading: Reading, node: RawNode): Expression {
  const { first, end } = node;
  const inner = node.children.find((child) => child.type !== "(" && child.type !== ")");
  if (inner === undefined) return notUnderstoodExpression(reading, node, "expression");
  if (inner.type === "compound_statement") {
    const body = inner.broken ? emptyBlock(inner.first, inner.end) : blockOf(reading, inner);
    return { kind: "statement-value", first, end, body };
  }
  // Without its parentheses, which a macro's body may have put around an argument.
  return expressionOf(reading, inner);
}

/** A bare name that the grammar could only take for a type. */
function typeAsValue(reading: Reading, node: RawNode): Expression {
  const type = childOf(node, "type");
  if (type === undefined || isType(reading, type)) return notUnderstoodExpression(reading, node, "type");
  return expressionOf(reading, type);
}
