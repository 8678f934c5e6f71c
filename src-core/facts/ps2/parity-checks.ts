import type { FunctionSymbol, TypedExpression, TypedStatement, Variable } from "../../reader/typed/nodes.ts";
import { walkStatement } from "../../reader/typed/walk.ts";
import { withoutConversions } from "../../reader/typed/without-conversions.ts";
import type { Field } from "../../reader/types/types.ts";
import type { Linkage } from "../walk/linkage.ts";
import type { DataCode } from "./data-code.ts";

type Named = Variable | Field;

/** What the code does that may be the check of a parity bit. */
interface Signs {
  /** Turned over again and again: `odd = !odd`, `parity ^= bit`. */
  readonly turned: Set<Named>;
  /** Counted: `ones++`. */
  readonly counted: Set<Named>;
  /** Looked at other than to turn or count it. */
  readonly looked: Set<Named>;
  /** Asked whether it is odd: `ones & 1`. */
  readonly askedOdd: Set<Named>;
  /** Something that is a check for certain, or of which nobody knows whether it is one. */
  maybe: boolean;
}

/**
 * Whether something in these functions may check the parity of a byte that came in. Parts of them that put data on the
 * line, and look at none, are left out: their parity is that of a byte to send.
 */
export function mayCheckParity(
  functions: Iterable<FunctionSymbol>,
  code: DataCode,
  linkage: Linkage,
): boolean {
  const signs: Signs = {
    turned: new Set(),
    counted: new Set(),
    looked: new Set(),
    askedOdd: new Set(),
    maybe: false,
  };
  for (const symbol of functions) {
    const body = linkage.definitionOf(symbol)?.body;
    if (body !== undefined) collect(body, linkage.definingSymbol(symbol), signs, code, linkage);
    if (signs.maybe) return true;
  }
  for (const named of signs.turned) if (signs.looked.has(named)) return true;
  for (const named of signs.counted) if (signs.askedOdd.has(named)) return true;
  return false;
}

function collect(
  body: TypedStatement,
  symbol: FunctionSymbol,
  signs: Signs,
  code: DataCode,
  linkage: Linkage,
): void {
  const sending = new Set<TypedStatement>();
  const targets = new Set<TypedExpression>();
  walkStatement(body, {
    statement(statement) {
      if (sending.has(statement)) return false;
      if (statement.kind === "if") {
        for (const arm of [statement.then, statement.otherwise]) {
          if (arm !== undefined && code.changesData(arm, symbol) && !code.readsData(arm, symbol))
            sending.add(arm);
        }
      }
      return true;
    },
    expression(expression) {
      look(expression, targets, signs, linkage);
      return true;
    },
  });
}

function look(
  expression: TypedExpression,
  targets: Set<TypedExpression>,
  signs: Signs,
  linkage: Linkage,
): void {
  switch (expression.kind) {
    case "compound-assign": {
      const target = named(expression.target, linkage);
      targets.add(withoutConversions(expression.target));
      if (target === undefined) return;
      if (expression.operator === "^") signs.turned.add(target);
      else if (expression.operator === "+") signs.counted.add(target);
      return;
    }
    case "update": {
      const target = named(expression.operand, linkage);
      targets.add(withoutConversions(expression.operand));
      if (target !== undefined && expression.operator === "++") signs.counted.add(target);
      return;
    }
    case "assign": {
      const target = named(expression.target, linkage);
      targets.add(withoutConversions(expression.target));
      const value = withoutConversions(expression.value);
      if (target === undefined) return;
      const isItself = (side: TypedExpression): boolean =>
        named(withoutConversions(side), linkage) === target;
      if (value.kind === "not" && isItself(value.operand)) {
        signs.turned.add(target);
        targets.add(withoutConversions(value.operand));
      } else if (value.kind === "arithmetic" && [value.left, value.right].some(isItself)) {
        const side = [value.left, value.right].find(isItself);
        if (value.operator !== "^" && value.operator !== "+") return;
        if (side !== undefined) targets.add(withoutConversions(side));
        (value.operator === "^" ? signs.turned : signs.counted).add(target);
      }
      return;
    }
    case "arithmetic": {
      if (isFolding(expression)) signs.maybe = true;
      const asked = oddnessOf(expression);
      const of = asked && named(asked, linkage);
      if (of !== undefined) signs.askedOdd.add(of);
      return;
    }
    case "variable":
    case "member": {
      const of = named(expression, linkage);
      if (of === undefined || targets.has(expression)) return;
      signs.looked.add(of);
      if (expression.type.kind === "array" && parityName.test(of.name)) signs.maybe = true;
      return;
    }
    case "call":
      if (expression.callee.kind === "function")
        called(expression.callee.function, expression.arguments, signs, linkage);
      return;
    case "method-call":
      called(expression.method, expression.arguments, signs, linkage);
      return;
    case "unresolved":
      if (expression.form === "call" && expression.operands.length > 0) signs.maybe = true;
      return;
    default:
      return;
  }
}

/** The variable or member that an expression names. */
function named(of: TypedExpression, linkage: Linkage): Named | undefined {
  const found = namedBy(of);
  return found && canonical(found, linkage);
}

const parityName = /parity|popcount|(^|_)(odd|even)(_|$)|(count|num)_?(ones|bits)|ones/i;

/** A function for parity; or one whose body is not there, which may be one. */
function called(
  symbol: FunctionSymbol,
  given: readonly TypedExpression[],
  signs: Signs,
  linkage: Linkage,
): void {
  if (parityName.test(symbol.name)) signs.maybe = true;
  if (!symbol.standIn && given.length > 0 && linkage.definitionOf(symbol) === undefined) signs.maybe = true;
}

/** `x ^ (x >> 4)`: halves of a value are laid over each other. */
function isFolding(expression: Extract<TypedExpression, { kind: "arithmetic" }>): boolean {
  if (expression.operator !== "^") return false;
  const [left, right] = [withoutConversions(expression.left), withoutConversions(expression.right)];
  return [left, right].some((side) => side.kind === "arithmetic" && side.operator === ">>");
}

/** What `x & 1` or `x % 2` asks about. */
function oddnessOf(
  expression: Extract<TypedExpression, { kind: "arithmetic" }>,
): TypedExpression | undefined {
  const constant = withoutConversions(expression.right);
  if (constant.kind !== "integer") return undefined;
  const asks =
    (expression.operator === "&" && constant.value === 1n) ||
    (expression.operator === "%" && constant.value === 2n);
  return asks ? withoutConversions(expression.left) : undefined;
}

function namedBy(expression: TypedExpression): Named | undefined {
  const inner = withoutConversions(expression);
  if (inner.kind === "variable") return inner.variable;
  return inner.kind === "member" ? inner.field : undefined;
}

function canonical(named: Named, linkage: Linkage): Named {
  return "storage" in named ? linkage.canonical(named) : linkage.canonicalField(named);
}
