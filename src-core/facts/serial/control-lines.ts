import type { Chip } from "../../model/chips/chip.ts";
import { pinLevel } from "../../model/rs232.ts";
import type { SerialWords } from "../../notes/wires.ts";
import type { Program } from "../../reader/program/program.ts";
import type { Variable } from "../../reader/typed/nodes.ts";
import type { Field } from "../../reader/types/types.ts";
import { namedCallOf } from "../board/calls.ts";
import type { PinName } from "../pins/pin-change.ts";
import { pinOfInterrupt, pinOfWord, pinsOfVector, pinText } from "../pins/pin-names.ts";
import { interruptPin } from "../ps2/handler-pins.ts";
import { levelOf } from "../ps2/wait-levels.ts";
import { pinOfTrace, pinOfValue, pinsOfRegister } from "../ps2/watched-pins.ts";
import { allEffects, functionEffects } from "../walk/effects.ts";
import type { EntryWalk, Event, Walk } from "../walk/events.ts";
import { eachOnce } from "../walk/in-order.ts";
import { linkageOf } from "../walk/linkage.ts";
import { integerOf, type Trace, type Value } from "../walk/values.ts";
import type { ControlLine } from "./serial-facts.ts";

/** Calls that look at the pin that they are given first. */
const LOOKS: ReadonlySet<string> = new Set(["digitalRead", "pulseIn", "pulseInLong", "analogRead"]);

/** The control lines that a note or edgewise.json names, and what the code does with them. */
export class ControlLines {
  readonly lines: readonly ControlLine[];
  readonly #chip: Chip | undefined;
  readonly #onLevel: 0 | 1 | undefined;
  readonly #variables: ReadonlySet<Variable>;
  readonly #fields: ReadonlySet<Field>;
  readonly #handlers: ReadonlySet<EntryWalk>;

  constructor(words: SerialWords, walk: Walk, program: Program) {
    const { chip } = program;
    this.#chip = chip;
    this.#onLevel = words.shifter && pinLevel("on", words.shifter.value);
    const isUnsure = mayLookUnseen(walk, program, chip);
    this.lines = (["rts", "dtr"] as const).flatMap((line): ControlLine[] => {
      const word = words[line];
      const pin = word && pinOfWord(chip, word.value);
      if (word === undefined || pin === undefined) return [];
      const looked = walk.entries.some((each) => looksAt(each, pin, walk, chip));
      return [
        {
          line,
          pin,
          text: pinText(chip, pin),
          span: word.span,
          looked: looked ? true : isUnsure ? undefined : false,
        },
      ];
    });
    const handlers = walk.entries.filter(
      (each) =>
        each.entry.kind === "interrupt" && this.lines.some(({ pin }) => looksAt(each, pin, walk, chip)),
    );
    this.#handlers = new Set(handlers);
    const linkage = handlers.length === 0 ? undefined : linkageOf(program);
    const effects =
      linkage &&
      allEffects(
        handlers.map(({ entry }) => functionEffects(entry.function, linkage)),
        linkage,
      );
    this.#variables = effects?.variables ?? new Set();
    this.#fields = effects?.fields ?? new Set();
  }

  /** An interrupt handler that runs when a control line changes, or that looks at one. */
  isHandler(each: EntryWalk): boolean {
    return this.#handlers.has(each);
  }

  /** Whether a value hangs on a control line, by itself or by what its handler has written. */
  concern(traces: readonly Trace[]): boolean {
    return traces.some((trace) => {
      if (trace.kind === "shared") {
        if (trace.variable !== undefined) return this.#variables.has(trace.variable);
        return trace.field !== undefined && this.#fields.has(trace.field);
      }
      return this.#pinOf(trace) !== undefined;
    });
  }

  /** What a condition that holds says of the line; undefined where that is not plain. */
  stateWhere(condition: Value | undefined, holds: boolean): "on" | "off" | undefined {
    if (this.#onLevel === undefined || condition?.kind !== "unknown") return undefined;
    const { compared, traces } = condition;
    const isPlain =
      compared === undefined ? isLevel(condition) : isLevel(compared.left) || isLevel(compared.right);
    const [pin] = traces.map((trace) => this.#pinOf(trace)).filter((each) => each !== undefined);
    const level = isPlain && pin !== undefined ? levelOf(condition, pin, this.#chip) : undefined;
    if (level === undefined) return undefined;
    const seen = (level === "high") === holds ? 1 : 0;
    return seen === this.#onLevel ? "on" : "off";
  }

  #pinOf(trace: Trace): PinName | undefined {
    const pin = pinOfTrace(this.#chip, trace);
    if (pin !== undefined) return this.lines.some((line) => line.pin === pin) ? pin : undefined;
    if (trace.kind !== "register") return undefined;
    const seen = pinsOfRegister(trace.register.name, trace.mask);
    return this.lines.find((line) => seen.includes(line.pin))?.pin;
  }
}

/** What reading one pin has given, and not what was made of it. */
function isLevel(value: Value): boolean {
  if (value.kind !== "unknown" || value.compared !== undefined) return false;
  if (value.copied !== undefined) return true;
  const isPin = value.traces.length === 1 && value.traces[0]?.kind === "pin";
  return isPin && (value.from === undefined || namedCallOf(value.from)?.name === "digitalRead");
}

function looksAt(each: EntryWalk, pin: PinName, walk: Walk, chip: Chip | undefined): boolean {
  const { entry, events } = each;
  if (entry.kind === "interrupt") {
    if (interruptPin(entry, walk.entries, chip) === pin) return true;
    // Of several pins that share a vector it is not known which is meant.
    const shared = entry.vector === undefined ? [] : pinsOfVector(chip, entry.vector);
    if (shared.length > 1 && shared.includes(pin) && interruptPin(entry, walk.entries, chip) === undefined) {
      return true;
    }
  }
  return eachOnce(events).some((event) => looksAtPin(event, pin, chip));
}

function looksAtPin(event: Event, pin: PinName, chip: Chip | undefined): boolean {
  if (event.kind === "register-read") return pinsOfRegister(event.register.name, event.mask).includes(pin);
  if (event.kind !== "outside-call") return false;
  const [given] = event.arguments;
  if (LOOKS.has(event.name)) return pinOfValue(chip, given) === pin;
  if (event.name !== "attachInterrupt") return false;
  const trace = given?.kind === "unknown" ? given.traces[0] : undefined;
  if (trace?.kind === "interrupt-of") return pinOfValue(chip, trace.pin) === pin;
  const number = integerOf(given);
  return number !== undefined && pinOfInterrupt(chip, number) === pin;
}

/** Instructions that touch neither pins nor registers of the serial port. */
const HARMLESS = /^\s*(nop|sei|cli|wdr|sleep|;|\\n|\s)*$/;

export function isHarmlessAssembly(text: string): boolean {
  return HARMLESS.test(text);
}

/** Something may look at a pin that is not read here. */
function mayLookUnseen(walk: Walk, program: Program, chip: Chip | undefined): boolean {
  if (walk.cutShort || program.units.some(({ preprocessed }) => preprocessed.missing.length > 0)) return true;
  return walk.entries.some(({ events }) =>
    eachOnce(events).some((event) => {
      switch (event.kind) {
        case "not-followed":
          return true;
        case "assembly":
          return !isHarmlessAssembly(event.text);
        case "outside-call":
          if (event.origin !== "core") return true;
          return LOOKS.has(event.name) && pinOfValue(chip, event.arguments[0]) === undefined;
        default:
          return false;
      }
    }),
  );
}
