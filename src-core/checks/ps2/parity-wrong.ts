// The ninth bit of a byte makes the ones of data and parity together an odd number. A mouse that gets an even one does not
// take the byte: it asks for it again (FE), and after the second time it reports an error (FC).
//
// The rule follows each known byte from the call that sends it to the data line, bit by bit, and looks at what stands
// there as the parity bit. Bytes whose bits cannot be followed, as where the clock's handler sends them, are left to a run.

import type { SentFrame } from "../../facts/ps2/ps2-facts.ts";
import { hexText } from "../../figures.ts";
import type { Fix } from "../../finding.ts";
import { oddParity } from "../../model/frames.ts";
import { formatSources } from "../../model/sources.ts";
import type { FunctionSymbol, TypedExpression, Variable } from "../../reader/typed/nodes.ts";
import { walkStatement } from "../../reader/typed/walk.ts";
import { withoutConversions } from "../../reader/typed/without-conversions.ts";
import { literalToken, replaced, spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";

const source = formatSources([
  { document: "ps2ProtocolArticle", place: "Host-to-Device" },
  { document: "auxiliaryDeviceTimings", place: "bit table" },
]);

export const parityWrong: Rule = {
  id: "ps2/parity-wrong",
  title: "A byte that is sent to the mouse with wrong parity",
  severity: "error",
  why:
    "The mouse refuses the byte and asks for it again, each time: it is never set up. Some mice take it all the same, " +
    "which hides the fault on the desk.",
  wrong: firmwareWith("  bool parity = true;", "  bool parity = false;"),
  right: rightFirmware,
  source,
  *check({ ps2 }) {
    const told = new Set<FunctionSymbol>();
    for (const frame of ps2.sentFrames) {
      if (frame.parity === oddParity(frame.byte) || told.has(frame.sender)) continue;
      told.add(frame.sender);
      yield evenParity(frame);
    }
  },
  judge: (trials) => draftsOfRuns("ps2/parity-wrong", trials),
};

function evenParity({ byte, parity, put, sender }: SentFrame): Draft {
  return {
    span: spanOf(put),
    message: `${hexText(byte)} is sent with parity bit ${parity}; the ones of data and parity must be an odd number`,
    source,
    related: [],
    fixes: turnedOver(sender),
  };
}

/** The start value of the only variable that the sender turns over with the bits. */
function turnedOver(sender: FunctionSymbol): readonly Fix[] {
  const body = sender.definition?.body;
  if (body === undefined) return [];
  const turned = new Set<Variable>();
  walkStatement(body, {
    expression(expression) {
      const variable = variableTurned(expression);
      if (variable !== undefined) turned.add(variable);
      return true;
    },
  });
  const [only] = turned;
  if (only === undefined || turned.size > 1 || only.initializer?.kind !== "value") return [];
  const token = literalToken(only.initializer.value);
  const opposite = token && { "0": "1", "1": "0", true: "false", false: "true" }[token.text];
  if (token === undefined || opposite === undefined) return [];
  return [{ title: `Begin with ${only.name} = ${opposite}`, edits: [replaced(token, opposite)] }];
}

/** `parity ^= bit`, `parity = parity ^ bit`, `parity = !parity`. */
function variableTurned(expression: TypedExpression): Variable | undefined {
  if (expression.kind === "compound-assign" && expression.operator === "^")
    return variableOf(expression.target);
  if (expression.kind !== "assign") return undefined;
  const variable = variableOf(expression.target);
  const value = withoutConversions(expression.value);
  const turns =
    (value.kind === "not" && variableOf(value.operand) === variable) ||
    (value.kind === "arithmetic" &&
      value.operator === "^" &&
      [value.left, value.right].some((side) => variableOf(side) === variable));
  return turns ? variable : undefined;
}

function variableOf(expression: TypedExpression): Variable | undefined {
  const inner = withoutConversions(expression);
  return inner.kind === "variable" ? inner.variable : undefined;
}
