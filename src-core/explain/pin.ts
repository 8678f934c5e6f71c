import type { Facts } from "../facts/facts.ts";
import { pinOfNumber, pinText } from "../facts/pins/pin-names.ts";
import type { Span } from "../finding.ts";
import { evaluate } from "../reader/constants/evaluate.ts";
import type { TypedExpression } from "../reader/typed/nodes.ts";
import { around, partUnder, written } from "./around.ts";
import { type Explanation, explanation } from "./explanation.ts";
import type { Place } from "./place.ts";
import { registerOf } from "./register-use.ts";

/** A number that names a pin: the bit of a port, or a board number for the sketch core. */
export function explainPin(place: Place): Explanation | undefined {
  const found = portBit(place) ?? boardNumber(place);
  if (found === undefined) return undefined;
  const { facts } = place;
  const roles = pinRolesOf(facts, found.pin);
  const about = interruptsOf(facts, found.pin);
  if (roles === undefined && about === undefined) return undefined;
  const text = pinText(facts.board.chip, found.pin);
  return explanation(found.span, roles === undefined ? text : `${text}: ${roles}`, [found.way, about]);
}

/** What a pin is used for, as far as somebody says or the code shows; undefined where nobody does. */
export function pinRolesOf({ board, ps2 }: Facts, pin: string): string | undefined {
  const roles = new Set(board.pinRoles.filter((each) => each.pin === pin).map(({ role }) => role));
  if (ps2.clock?.pin === pin) roles.add("the PS/2 clock");
  if (ps2.data?.pin === pin) roles.add("the PS/2 data line");
  return roles.size === 0 ? undefined : [...roles].join(", ");
}

interface NamedPin {
  readonly pin: string;
  readonly span: Span;
  readonly way: string | undefined;
}

/** `1 << CLOCK` beside a register of a port: the place has to be in `CLOCK`. */
function portBit(place: Place): NamedPin | undefined {
  const outward = around(place).toReversed();
  for (const [index, { expression, span }] of outward.entries()) {
    if (expression.kind !== "arithmetic" || expression.operator !== "<<") continue;
    const part = partUnder(place, expression.right, span);
    const bit = integer(place, expression.right);
    if (part === undefined || bit === undefined || integer(place, expression.left) !== 1) continue;
    const ports = outward.slice(index + 1).map(({ expression: outer }) => portOf(place, outer));
    const port = ports.find((each) => each !== undefined);
    if (port !== undefined) return { pin: `P${port}${bit}`, span: part, way: `Bit ${bit} of port ${port}.` };
  }
  return undefined;
}

function portOf(place: Place, expression: TypedExpression): string | undefined {
  for (const side of sidesOf(expression)) {
    const name = registerOf(place, written(side))?.name;
    const letter = /^(?:PORT|DDR|PIN)([A-L])$/.exec(name ?? "")?.[1];
    if (letter !== undefined) return letter;
  }
  return undefined;
}

function sidesOf(expression: TypedExpression): readonly TypedExpression[] {
  switch (expression.kind) {
    case "assign":
    case "compound-assign":
      return [expression.target];
    case "arithmetic":
      return [expression.left, expression.right];
    default:
      return [];
  }
}

/** Functions of the sketch core whose first argument is a board number. */
const pinFunctions: ReadonlySet<string> = new Set(["pinMode", "digitalWrite", "digitalRead"]);

function boardNumber(place: Place): NamedPin | undefined {
  for (const { expression, span } of around(place).toReversed()) {
    if (expression.kind !== "call" || expression.callee.kind !== "function") continue;
    const [argument] = expression.arguments;
    if (!pinFunctions.has(expression.callee.function.name) || argument === undefined) return undefined;
    const part = partUnder(place, argument, span);
    const number = integer(place, argument);
    if (part === undefined || number === undefined) return undefined;
    return { pin: pinOfNumber(place.facts.board.chip, number), span: part, way: undefined };
  }
  return undefined;
}

function integer({ facts }: Place, expression: TypedExpression): number | undefined {
  const value = evaluate(expression, facts.program.model);
  return value.kind === "integer" ? Number(value.value) : undefined;
}

function interruptsOf({ board: { chip } }: Facts, name: string): string | undefined {
  const pin = chip?.kind === "avr" ? chip.pins.find((each) => each.name === name) : undefined;
  if (pin === undefined) return undefined;
  const { externalInterrupt, pinChange } = pin;
  const served = [
    externalInterrupt && `external interrupt ${externalInterrupt.name}`,
    pinChange && `pin-change interrupt ${pinChange.name}`,
  ].filter((each) => each !== undefined);
  return served.length === 0 ? "No interrupt of its own." : `Can raise ${served.join(" and ")}.`;
}
