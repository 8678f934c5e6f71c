import { AVR_RESET_FRAME } from "../../model/avr-frames.ts";
import type { Chip } from "../../model/chips/chip.ts";
import { type LineFormat, parseLineFormat } from "../../model/line-formats.ts";
import { evaluate } from "../../reader/constants/evaluate.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import type { DataModel } from "../../reader/types/types.ts";
import { macrosOf } from "../board/interrupts-off.ts";
import type { Event, OutsideCall, Walk } from "../walk/events.ts";
import { integerOf, type Value } from "../walk/values.ts";
import type { PortName, Rate, SetFormat, SetUp } from "./serial-facts.ts";
import type { Step } from "./steps.ts";
import { topBitOf } from "./top-bit.ts";

/** Set-ups by `begin` of the sketch core's serial classes and of its software serial library. */
export function coreSetUps(
  steps: readonly Step[],
  walk: Walk,
  chip: Chip | undefined,
  model: DataModel,
): readonly SetUp[] {
  return steps.flatMap(({ event, conditional }) => {
    if (event.kind !== "outside-call" || !event.name.endsWith(".begin")) return [];
    const port = portOf(event, chip, model);
    const [baud] = event.arguments;
    if (port === undefined || baud === undefined) return [];
    const expression = event.expressions[0];
    const at = baud.from?.at ?? expression?.at ?? event.at;
    const inHardware = port.kind === "uart";
    return [
      {
        port,
        by: inHardware ? "core" : "software serial",
        span: visibleRange(at.first, at.last),
        expression: baud.from ?? expression,
        target: undefined,
        rate: rateOf(baud),
        needsClock: false,
        format: inHardware ? formatOf(event) : unset,
        transmits: true,
        receives: true,
        topBit: topBitOf(walk, (each) => bytesSent(each, event)),
        conditional,
      },
    ];
  });
}

/** `begin` without a format, and the software serial library always, use what the hardware starts with. */
const unset: SetFormat = {
  format: AVR_RESET_FRAME,
  expression: undefined,
  span: undefined,
  register: undefined,
  assigned: undefined,
  select: undefined,
};

function rateOf(baud: Value): Rate {
  const value = integerOf(baud);
  return value === undefined ? { kind: "unknown" } : { kind: "baud", baud: value };
}

/** The object's own name, where it is reached by another one. */
export function objectOf(event: OutsideCall): string {
  const root = event.object?.kind === "address" ? event.object.place.root : undefined;
  return root?.kind === "variable"
    ? root.name
    : event.name.slice(0, Math.max(0, event.name.lastIndexOf(".")));
}

/**
 * The port whose object a member function is called on; undefined for other objects. `Serial` is the USB port on chips
 * that have one; their UART is `Serial1`.
 */
export function portOf(event: OutsideCall, chip: Chip | undefined, model: DataModel): PortName | undefined {
  const object = objectOf(event);
  const className = event.function?.memberOf?.name;
  if (className === "SoftwareSerial") {
    return { kind: "software", name: object, ...madeWith(event, model) };
  }
  const uart = /^Serial(\d?)$/.exec(object)?.[1];
  if (uart === undefined || event.origin === "declared") return undefined;
  const number = Number(uart);
  if (chip?.uarts !== undefined && !chip.uarts.includes(number)) return undefined;
  return { kind: "uart", uart: number };
}

/** Receive and transmit pin, and whether levels are turned over, from the arguments that the object was made with. */
function madeWith(
  event: OutsideCall,
  model: DataModel,
): Pick<Extract<PortName, { kind: "software" }>, "pins" | "inverse"> {
  const root = event.object?.kind === "address" ? event.object.place.root : undefined;
  const initializer = root?.kind === "variable" ? root.initializer : undefined;
  if (initializer?.kind !== "constructor") return { pins: [undefined, undefined], inverse: undefined };
  const [rx, tx, inverse] = initializer.arguments.map((argument) => {
    const value = evaluate(argument, model);
    return value.kind === "integer" ? Number(value.value) : undefined;
  });
  const isSaid = initializer.arguments.length > 2;
  return { pins: [rx, tx], inverse: !isSaid ? false : inverse === undefined ? undefined : inverse !== 0 };
}

function formatOf(event: OutsideCall): SetFormat {
  const config = event.arguments[1];
  if (config === undefined) return unset;
  const expression = config.from ?? event.expressions[1];
  const at = expression?.at ?? event.at;
  return {
    format: expression && formatNamedBy(expression),
    expression,
    span: visibleRange(at.first, at.last),
    register: undefined,
    assigned: undefined,
    select: undefined,
  };
}

/** `SERIAL_7N1`: what the name stands for differs between cores, the name does not. */
function formatNamedBy(expression: TypedExpression): LineFormat | undefined {
  const { first } = expression.at;
  for (const name of [first.text, ...macrosOf(first)]) {
    const format = /^SERIAL_(\d[NEOMS]\d)$/.exec(name)?.[1];
    if (format !== undefined) return parseLineFormat(format);
  }
  return undefined;
}

/** Values that an event sends by the same object; undefined for a text, or an array whose bytes are not seen. */
function bytesSent(event: Event, begin: OutsideCall): readonly Value[] | undefined {
  if (event.kind !== "outside-call") return [];
  if (objectOf(event) !== objectOf(begin)) return [];
  const verb = event.name.slice(event.name.lastIndexOf(".") + 1);
  if (verb.startsWith("print")) return undefined;
  if (verb !== "write") return [];
  const [byte] = event.arguments;
  return event.arguments.length === 1 && byte !== undefined && byte.kind !== "address" ? [byte] : undefined;
}
