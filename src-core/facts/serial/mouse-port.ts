import type { Chip } from "../../model/chips/chip.ts";
import type { SerialWords } from "../../notes/wires.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import type { DataModel } from "../../reader/types/types.ts";
import type { PinName } from "../pins/pin-change.ts";
import { pinOfWord } from "../pins/pin-names.ts";
import type { CallEvent, Event, OutsideCall } from "../walk/events.ts";
import { integerOf, type Value } from "../walk/values.ts";
import { bytesOnPin, type FrameSearch } from "./bit-banged.ts";
import { objectOf, portOf } from "./core-set-ups.ts";
import type { BitBangedByte, SentByte, SetUp } from "./serial-facts.ts";
import { usartRegisters } from "./usarts.ts";

/** What the reports leave by. */
export type MousePort =
  | { readonly kind: "uart"; readonly uart: number }
  | { readonly kind: "software"; readonly name: string }
  | { readonly kind: "pin"; readonly pin: PinName };

/** The port that is said, or the only one that there is. */
export function mousePort(
  words: SerialWords,
  chip: Chip | undefined,
  setUps: readonly SetUp[],
  bitBanged: readonly BitBangedByte[],
): MousePort | undefined {
  if (words.uart !== undefined) return { kind: "uart", uart: words.uart.value };
  const [first, ...others] = setUps;
  const isOne = others.every(({ port }) => samePort(port, first?.port));
  if (first !== undefined && isOne) {
    const { port } = first;
    return port.kind === "uart" ? port : { kind: "software", name: port.name };
  }
  if (first !== undefined) return undefined;
  const pin = (words.tx && pinOfWord(chip, words.tx.value)) ?? bitBanged[0]?.pin;
  return pin === undefined ? undefined : { kind: "pin", pin };
}

function samePort(a: SetUp["port"], b: SetUp["port"] | undefined): boolean {
  if (a.kind === "uart") return b?.kind === "uart" && a.uart === b.uart;
  return b?.kind === "software" && a.name === b.name;
}

/** What an event puts on the line: bytes, or bytes that nobody can see here. */
export type Sending = readonly SentByte[] | "unseen";

/** Tells of events what they send by the port; undefined for those that send nothing there. */
export class Line {
  readonly #port: MousePort;
  readonly #chip: Chip | undefined;
  readonly #model: DataModel;
  readonly #search: Pick<FrameSearch, "dataBits" | "steps">;
  readonly #registers: ReturnType<typeof usartRegisters>;
  readonly #inside = new WeakMap<readonly Event[], BytesInside>();

  constructor(
    port: MousePort,
    chip: Chip | undefined,
    model: DataModel,
    search: Pick<FrameSearch, "dataBits" | "steps">,
  ) {
    this.#port = port;
    this.#search = search;
    this.#chip = chip;
    this.#model = model;
    this.#registers = usartRegisters(chip);
  }

  sentBy(event: Event): Sending | undefined {
    switch (event.kind) {
      case "register-write": {
        if (this.#port.kind !== "uart") return undefined;
        const found = this.#registers.get(event.register.name);
        if (found?.part !== "data" || found.usart.number !== this.#port.uart) return undefined;
        return [sentByte(event.value, event.value.from, event)];
      }
      case "outside-call":
        return this.#sentByMember(event);
      case "call":
        return this.#port.kind === "pin" ? this.#sentBitByBit(event, this.#port.pin) : undefined;
      default:
        return undefined;
    }
  }

  #sentByMember(call: OutsideCall): Sending | undefined {
    const verb = /\.(write|print|println)$/.exec(call.name)?.[1];
    if (verb === undefined || this.#port.kind === "pin") return undefined;
    if (!this.#isOwn(call)) return undefined;
    const { contents } = call;
    const [value] = call.arguments;
    const [expression] = call.expressions;
    if (contents !== undefined && verb !== "println") {
      return contents.map((each) =>
        sentByte(each, isStringOf(expression) ? expression : (each.from ?? expression), call),
      );
    }
    if (value === undefined || value.kind === "address") return "unseen";
    const isCharacter = verb === "write" ? call.arguments.length === 1 : isPlainCharacter(expression);
    return isCharacter && verb !== "println" ? [sentByte(value, value.from ?? expression, call)] : "unseen";
  }

  #isOwn(call: OutsideCall): boolean {
    const own = this.#port;
    // `write` and `print` are members of a base class: the object tells the port.
    if (own.kind === "software") return objectOf(call) === own.name;
    const port = portOf(call, this.#chip, this.#model);
    return own.kind === "uart" && port?.kind === "uart" && port.uart === own.uart;
  }

  /** A function that puts one byte on the pin and does nothing else there; the innermost that does. */
  #sentBitByBit(call: CallEvent, pin: PinName): Sending | undefined {
    const { bytes, deeper } = this.#bytesInside(call.events, pin);
    if (bytes.length !== 1 || deeper) return undefined;
    const [argument, ...others] = call.arguments;
    const given = others.length === 0 ? integerOf(argument) : undefined;
    const expression = argument?.from ?? call.expressions[0];
    const at = expression?.at ?? call.at;
    const byte = bytes[0] ?? (given === undefined ? undefined : given & BYTE);
    return [{ byte, span: visibleRange(at.first, at.last), expression }];
  }

  #bytesInside(events: readonly Event[], pin: PinName): BytesInside {
    let found = this.#inside.get(events);
    if (found === undefined) {
      const deeper = events.some(
        (event) => event.kind === "call" && this.#bytesInside(event.events, pin).bytes.length > 0,
      );
      found = { bytes: bytesOnPin(events, { ...this.#search, pin }), deeper };
      this.#inside.set(events, found);
    }
    return found;
  }
}

interface BytesInside {
  readonly bytes: readonly (number | undefined)[];
  /** A call among the events sends a byte by itself. */
  readonly deeper: boolean;
}

const BYTE = 0xff;

function sentByte(value: Value, from: TypedExpression | undefined, { at }: Pick<Event, "at">): SentByte {
  const number = integerOf(value);
  const place = from?.at ?? at;
  return {
    byte: number === undefined ? undefined : number & BYTE,
    span: visibleRange(place.first, place.last),
    expression: from,
  };
}

function isStringOf(expression: TypedExpression | undefined): expression is TypedExpression {
  if (expression?.kind === "convert") return isStringOf(expression.operand);
  return expression?.kind === "string";
}

/** `print('M')` sends the character, `print(77)` its digits. */
function isPlainCharacter(expression: TypedExpression | undefined): boolean {
  return expression?.type.kind === "integer" && expression.type.plainChar === true;
}
