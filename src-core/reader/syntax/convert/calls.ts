import type { RawNode } from "../grammar/raw-nodes.ts";
import type { CastStyle, Expression } from "../nodes.ts";
import { expressionOf } from "./expressions.ts";
import { childOf, childOfType, type Reading } from "./reading.ts";
import { plainTypeName, typeNameOf } from "./types.ts";

/** The expressions of `(a, b)` or `{a, b}`. */
export function argumentsOf(reading: Reading, list: RawNode): readonly Expression[] {
  const found: Expression[] = [];
  for (const child of list.children) {
    if (separators.has(child.type)) continue;
    if (child.type === "initializer_pair" || child.type === "compound_statement") {
      found.push({
        kind: "not-understood",
        first: child.first,
        end: child.end,
        what: "argument not understood",
      });
      reading.note(child.first, child.end, "This argument is not understood.");
    } else found.push(expressionOf(reading, child));
  }
  return found;
}

const separators: ReadonlySet<string> = new Set(["(", ")", "{", "}", "[", "]", ",", "MISSING"]);

const namedCasts: Readonly<Record<string, CastStyle>> = {
  static_cast: "static_cast",
  reinterpret_cast: "reinterpret_cast",
  const_cast: "const_cast",
  dynamic_cast: "dynamic_cast",
};

/** A call, or what looks like one: `T(x)`, `static_cast<T>(x)`. */
export function callOf(reading: Reading, node: RawNode): Expression {
  const { first, end } = node;
  const callee = childOf(node, "function");
  const list = childOf(node, "arguments");
  if (callee === undefined || list === undefined) {
    return { kind: "not-understood", first, end, what: "call not understood" };
  }
  const named = namedCast(reading, node, callee, list);
  if (named !== undefined) return named;
  if (reading.text(callee.first) === "__builtin_va_arg") return nextArgument(reading, node, list);
  if (isType(reading, callee)) {
    const type = plainTypeName(reading, callee);
    return {
      kind: "cast",
      first: type.first,
      end,
      style: "functional",
      type,
      operands: argumentsOf(reading, list),
    };
  }
  return {
    kind: "call",
    first,
    end,
    callee: expressionOf(reading, callee),
    arguments: argumentsOf(reading, list),
  };
}

/** `__builtin_va_arg(list, T)`, whose type the outline showed as that of a cast. */
function nextArgument(reading: Reading, { first, end }: RawNode, given: RawNode): Expression {
  const [from, cast] = given.children.filter((child) => !separators.has(child.type));
  const type = cast?.type === "cast_expression" ? childOf(cast, "type") : undefined;
  if (from === undefined || type === undefined)
    return { kind: "not-understood", first, end, what: "argument list not understood" };
  return {
    kind: "next-argument",
    first,
    end,
    list: expressionOf(reading, from),
    type: typeNameOf(reading, type),
  };
}

/** Whether the outline took the called name for a type. */
export function isType(reading: Reading, callee: RawNode): boolean {
  if (callee.type === "primitive_type") return true;
  if (callee.type === "template_function") {
    const name = childOf(callee, "name");
    return name !== undefined && reading.presentation.typeNames.has(name.first);
  }
  if (callee.type === "qualified_identifier") {
    const last = childOf(callee, "name");
    return last !== undefined && isType(reading, last);
  }
  return callee.type === "identifier" && reading.presentation.typeNames.has(callee.first);
}

function namedCast(reading: Reading, node: RawNode, callee: RawNode, list: RawNode): Expression | undefined {
  const style = callee.type === "template_function" ? namedCasts[reading.text(callee.first)] : undefined;
  if (style === undefined) return undefined;
  const { first, end } = node;
  const type = childOfType(childOf(callee, "arguments") ?? callee, "type_descriptor");
  if (type === undefined) return { kind: "not-understood", first, end, what: "cast not understood" };
  return {
    kind: "cast",
    first,
    end,
    style,
    type: typeNameOf(reading, type),
    operands: argumentsOf(reading, list),
  };
}
