import { functionCalled } from "../../reader/typed/function-called.ts";
import type {
  FunctionSymbol,
  TypedExpression,
  TypedInitializer,
  TypedStatement,
  Variable,
} from "../../reader/typed/nodes.ts";
import { walkExpression, walkStatement } from "../../reader/typed/walk.ts";
import { withoutConversions } from "../../reader/typed/without-conversions.ts";
import type { Type } from "../../reader/types/types.ts";
import type { Linkage } from "../walk/linkage.ts";
import type { LineTraces } from "./line-traces.ts";

type Call = Extract<TypedExpression, { kind: "call" | "method-call" }>;

/** A value that goes into a variable that ends with its call. */
interface Flow {
  readonly to: Variable;
  readonly value: TypedExpression;
}

/**
 * Tells which values are bytes of the mouse, by the text: what only the clock's handler writes, what functions give that
 * use that, and what comes of either by assignment or as an argument.
 */
export class MouseBytes {
  readonly #lines: LineTraces;
  readonly #linkage: Linkage;
  readonly #bodies: readonly TypedStatement[];
  readonly #handled: ReadonlySet<FunctionSymbol>;
  #held: ReadonlySet<Variable> | undefined;

  /** `handled`: functions that use what the clock's handler writes. */
  constructor(
    lines: LineTraces,
    linkage: Linkage,
    bodies: readonly TypedStatement[],
    handled: ReadonlySet<FunctionSymbol>,
  ) {
    this.#lines = lines;
    this.#linkage = linkage;
    this.#bodies = bodies;
    this.#handled = handled;
  }

  /** Whether a value is such a byte; what is put together with a register is not. */
  are(value: TypedExpression): boolean {
    this.#held ??= this.#find();
    return this.#areAmong(value, this.#held) && !readsRegister(value);
  }

  /** A call that may write such a byte to what its arguments point to. */
  areGivenBy(call: Call): boolean {
    const symbol = functionCalled(call);
    return symbol !== undefined && this.#handled.has(this.#linkage.definingSymbol(symbol));
  }

  #find(): ReadonlySet<Variable> {
    const held = new Set<Variable>();
    let open = this.#bodies.flatMap((body) => this.#flowsIn(body, held));
    for (;;) {
      const left = open.filter(({ to, value }) => {
        if (!this.#areAmong(value, held)) return true;
        held.add(to);
        return false;
      });
      if (left.length === open.length) return held;
      open = left;
    }
  }

  /** What goes into variables in a body; those that a call fills by their address are put into `filled` at once. */
  #flowsIn(body: TypedStatement, filled: Set<Variable>): readonly Flow[] {
    const { flows, calls } = movesIn(body);
    const given: Flow[] = [];
    for (const call of calls) {
      const symbol = functionCalled(call);
      const parameters = symbol && this.#linkage.definitionOf(symbol)?.parameters;
      if (parameters === undefined) continue;
      for (const [index, value] of call.arguments.entries()) {
        const to = parameters[index];
        if (to === undefined) continue;
        given.push({ to, value });
        const variable = pointedTo(value, to.type);
        if (variable !== undefined && this.areGivenBy(call)) filled.add(variable);
      }
    }
    return given.length === 0 ? flows : [...flows, ...given];
  }

  #areAmong(value: TypedExpression, held: ReadonlySet<Variable>): boolean {
    let found = false;
    walkExpression(value, {
      expression: (part) => {
        if (part.kind === "variable") {
          const variable = this.#linkage.canonical(part.variable);
          found ||= held.has(part.variable) || this.#lines.isHandled(variable, undefined);
        } else if (part.kind === "member")
          found ||= this.#lines.isHandled(undefined, this.#linkage.canonicalField(part.field));
        else if (part.kind === "call" || part.kind === "method-call") found ||= this.areGivenBy(part);
        return !found;
      },
    });
    return found;
  }
}

/** Values that a body gives to its variables, and calls that hand some on. */
interface Moves {
  readonly flows: readonly Flow[];
  readonly calls: readonly Call[];
}

const known = new WeakMap<TypedStatement, Moves>();

/** Kept with the body, which never changes. */
function movesIn(body: TypedStatement): Moves {
  const before = known.get(body);
  if (before !== undefined) return before;
  const flows: Flow[] = [];
  const calls: Call[] = [];
  const into = (to: Variable, value: TypedExpression): void => {
    if (to.storage === "local" || to.storage === "parameter") flows.push({ to, value });
  };
  walkStatement(body, {
    statement(statement) {
      if (statement.kind !== "variables") return true;
      for (const variable of statement.variables) {
        const value = givenValue(variable.initializer);
        if (value !== undefined) into(variable, value);
      }
      return true;
    },
    expression(expression) {
      if (expression.kind === "assign") {
        const target = withoutConversions(expression.target);
        if (target.kind === "variable") into(target.variable, expression.value);
      } else if (expression.kind === "call" || expression.kind === "method-call") {
        if (expression.arguments.length > 0) calls.push(expression);
      }
      return true;
    },
  });
  const moves = { flows, calls };
  known.set(body, moves);
  return moves;
}

function givenValue(initializer: TypedInitializer | undefined): TypedExpression | undefined {
  return initializer?.kind === "value" ? initializer.value : undefined;
}

/** The variable that a parameter of this type lets the function write. */
function pointedTo(argument: TypedExpression, type: Type): Variable | undefined {
  const given = withoutConversions(argument);
  const inner =
    given.kind === "address"
      ? withoutConversions(given.operand)
      : type.kind === "reference"
        ? given
        : undefined;
  return inner?.kind === "variable" ? inner.variable : undefined;
}

function readsRegister(value: TypedExpression): boolean {
  let found = false;
  walkExpression(value, {
    expression(part) {
      if (part.kind === "dereference" && withoutConversions(part.operand).kind === "integer") found = true;
      return !found;
    },
  });
  return found;
}
