import type { FieldName } from "../../model/layouts/layout.ts";
import { possibleBits } from "../../reader/constants/possible-bits.ts";
import type { Program } from "../../reader/program/program.ts";
import { isCalled } from "../../reader/typed/is-called.ts";
import type { At, TypedExpression } from "../../reader/typed/nodes.ts";
import { walkExpression } from "../../reader/typed/walk.ts";
import type { DataModel } from "../../reader/types/types.ts";
import type { BitPlace } from "../judge/fault-draft.ts";
import type { Bound } from "../subject/operands.ts";
import type { ByteWritten } from "../subject/sink.ts";
import { Flow } from "./mentions.ts";
import { storedExpression } from "./stored-expressions.ts";

/** What is known of where a wrong bit came from. */
export interface Clue {
  readonly place: BitPlace | undefined;
  /** The field whose operand is wanted; undefined for all that the byte was given. */
  readonly driver: FieldName | undefined;
  readonly written: readonly ByteWritten[];
  readonly operands: readonly Bound[];
}

/** The expression to blame: the operand of the last store to the byte that brought the wrong bit. */
export function placeToBlame(program: Program, { place, driver, written, operands }: Clue): At | undefined {
  if (place === undefined) return undefined;
  const stores = written.filter(({ byte }) => byte === place.byte);
  const bound = operands.find(({ field }) => field === driver);
  const name = bound?.operand.path.at(-1);
  const parts = stores.flatMap(({ at }, index) =>
    at === undefined ? [] : partsOf(program, at).map((part) => ({ ...part, index })),
  );
  const driving =
    name === undefined
      ? []
      : parts.filter(
          ({ flow, expression }) =>
            flow.mentions(expression, name) && !masksOut(expression, name, bound?.operand.bit, program.model),
        );
  const reaching = driving.filter(({ bits }) => ((bits >> place.bit) & 1) === 1);
  const blamed = (reaching.length > 0 ? reaching : driving).at(-1);
  if (blamed !== undefined) return blamed.expression.at;
  if (driver === undefined && isSet(stores, place.bit)) {
    const setting = parts.filter(({ bits }) => ((bits >> place.bit) & 1) === 1);
    if (setting[0] !== undefined && setting.length === 1) return setting[0].expression.at;
  }
  const at = (changing(stores, place.bit) ?? stores.at(-1))?.at;
  return at && (storedExpression(program, at)?.expression.at ?? at);
}

function isSet(stores: readonly ByteWritten[], bit: number): boolean {
  return (((stores.at(-1)?.value ?? 0) >> bit) & 1) === 1;
}

/** The store after which the bit has the value that it is sent with. */
function changing(stores: readonly ByteWritten[], bit: number): ByteWritten | undefined {
  const last = stores.at(-1);
  if (last === undefined) return undefined;
  const level = (last.value >> bit) & 1;
  let found: ByteWritten | undefined;
  for (const store of stores) {
    const is = (store.value >> bit) & 1;
    if (is !== level) found = undefined;
    else found ??= store;
  }
  return level === 1 ? found : last;
}

interface Part {
  readonly expression: TypedExpression;
  readonly flow: Flow;
  readonly bits: number;
}

/** Whether a mask right at the name (`b & 1`) leaves the bit out that is wanted of it. */
function masksOut(
  expression: TypedExpression,
  name: string,
  bit: number | undefined,
  model: DataModel,
): boolean {
  if (bit === undefined) return false;
  let isOut = false;
  const leavesOut = (place: TypedExpression, mask: TypedExpression): boolean =>
    isCalled(place, name) && ((possibleBits(mask, model) >> bit) & 1) === 0;
  walkExpression(expression, {
    expression: (each) => {
      if (each.kind === "arithmetic" && each.operator === "&")
        isOut ||= leavesOut(each.left, each.right) || leavesOut(each.right, each.left);
      return !isOut;
    },
  });
  return isOut;
}

/** The operands of `|`, `^` and `+` that an expression is put together from. */
function partsOf(program: Program, at: At): readonly Part[] {
  const stored = storedExpression(program, at);
  if (stored === undefined) return [];
  const flow = new Flow(stored.definition);
  return operandsIn(stored.expression).map((expression) => ({
    expression,
    flow,
    bits: possibleBits(expression, program.model),
  }));
}

function operandsIn(expression: TypedExpression): readonly TypedExpression[] {
  if (expression.kind === "convert" && expression.type.kind === "integer") {
    const inner = operandsIn(expression.operand);
    return inner.length > 1
      ? inner
      : [expression.reason === "explicit" ? expression : (inner[0] ?? expression)];
  }
  if (expression.kind !== "arithmetic") return [expression];
  const { operator, left, right } = expression;
  if (operator !== "|" && operator !== "^" && operator !== "+") return [expression];
  return [...operandsIn(left), ...operandsIn(right)];
}
