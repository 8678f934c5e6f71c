import type { Handler } from "../facts/board/handlers.ts";
import { pinText } from "../facts/pins/pin-names.ts";
import { interruptPin } from "../facts/ps2/handler-pins.ts";
import { integerOf } from "../facts/walk/values.ts";
import { clockText, plain } from "../figures.ts";
import type { AvrChip, ExternalInterrupt } from "../model/chips/chip.ts";
import { interruptSenses } from "../model/chips/interrupt-senses.ts";
import { vectorNamed } from "../model/chips.ts";
import { quantity } from "../model/quantities.ts";
import { formatSources } from "../model/sources.ts";
import { visibleRange } from "../reader/tokens.ts";
import { type Explanation, explanation, holds } from "./explanation.ts";
import { pinRolesOf } from "./pin.ts";
import type { Place } from "./place.ts";
import { timerText } from "./timer.ts";

/** The name of an interrupt handler where it is defined: what makes it run, and how long it may take. */
export function explainHandler(place: Place): Explanation | undefined {
  const { facts, file, offset } = place;
  for (const handler of facts.board.handlers) {
    const { at } = handler.function;
    const { file: in_, start, end } = visibleRange(at.first, at.last);
    const span = { file: in_, start, end };
    if (!holds(span, file, offset)) continue;
    const trigger = triggerOf(place, handler);
    if (trigger === undefined) return undefined;
    const { vector } = handler.entry;
    return explanation(span, `${vector ?? handler.function.name}: ${trigger.what}`, [
      ...trigger.lines,
      "While it runs, no other interrupt is served, unless it lets them.",
    ]);
  }
  return undefined;
}

interface Trigger {
  readonly what: string;
  readonly lines: readonly (string | undefined)[];
}

function triggerOf(place: Place, handler: Handler): Trigger | undefined {
  const { board } = place.facts;
  const { vector, attachedBy } = handler.entry;
  const pin = interruptPin(handler.entry, [handler, ...board.handlers], board.chip);
  if (attachedBy !== undefined) {
    const sense = senseWords(integerOf(attachedBy.arguments[2]));
    return pin === undefined
      ? undefined
      : {
          what: `interrupt of ${pinWords(place, pin)}${sense === undefined ? "" : ` ${sense}`}`,
          lines: [clockBudget(place, pin)],
        };
  }
  if (vector === undefined || board.chip?.kind !== "avr") return undefined;
  return (
    externalTrigger(place, board.chip, vector) ??
    pinChangeTrigger(place, board.chip, vector) ??
    timerTrigger(place, vector) ??
    usartTrigger(place, board.chip, vector)
  );
}

function pinWords({ facts }: Place, pin: string): string {
  const roles = pinRolesOf(facts, pin);
  const text = pinText(facts.board.chip, pin);
  return roles === undefined ? text : `${text}, ${roles}`;
}

/** `at its low level`; undefined where the number is not known, or is none of a sense. */
function senseWords(number: number | undefined): string | undefined {
  const sense = number === undefined ? undefined : interruptSenses[number];
  if (sense === undefined) return undefined;
  return sense === "any change" ? `at ${sense}` : `at its ${sense}`;
}

function externalTrigger(place: Place, chip: AvrChip, vector: string): Trigger | undefined {
  const names: readonly string[] = vectorNamed(chip, vector)?.names ?? [];
  const pin = chip.pins.find(({ externalInterrupt }) => names.includes(externalInterrupt?.vector ?? ""));
  if (pin?.externalInterrupt === undefined) return undefined;
  const sense = senseOf(place, pin.externalInterrupt);
  return {
    what: `interrupt of ${pinWords(place, pin.name)}${sense === undefined ? "" : ` ${sense}`}`,
    lines: [clockBudget(place, pin.name)],
  };
}

/** How the program sets the edge; after a reset it is the low level. */
function senseOf({ facts }: Place, { sense }: ExternalInterrupt): string | undefined {
  if (sense === undefined) return undefined;
  let value = 0;
  for (const { register, bit } of sense) {
    const state = facts.board.registers().get(register);
    if (state !== undefined && (state.bits.known & (1 << bit)) === 0) return undefined;
    value = value * 2 + (((state?.bits.ones ?? 0) >> bit) & 1);
  }
  return senseWords(value);
}

function pinChangeTrigger(place: Place, chip: AvrChip, vector: string): Trigger | undefined {
  const names: readonly string[] = vectorNamed(chip, vector)?.names ?? [];
  const group = chip.pins.filter(({ pinChange }) => names.includes(pinChange?.vector ?? ""));
  if (group.length === 0) return undefined;
  const watched = group.filter(({ pinChange }) => {
    if (pinChange === undefined) return false;
    const { register, bit } = pinChange.mask;
    return (((place.facts.board.registers().get(register)?.bits.ones ?? 0) >> bit) & 1) === 1;
  });
  const [only] = watched;
  const pins =
    watched.length === 0 ? "no pin yet" : watched.map(({ name }) => pinWords(place, name)).join("; ");
  return {
    what: `any change of ${pins}`,
    lines: [
      "It runs at falling and rising edges alike; which pin changed, and to which level, only reading it tells.",
      only === undefined || watched.length > 1 ? undefined : clockBudget(place, only.name),
    ],
  };
}

const timerEvents: readonly (readonly [RegExp, string])[] = [
  [/^COMP([ABC])$/, "compare match $1"],
  [/^OVF$/, "overflow"],
  [/^CAPT$/, "input capture"],
];

function timerTrigger({ facts }: Place, vector: string): Trigger | undefined {
  const [, number, event = ""] = /^TIMER(\d)_(\w+)_vect$/.exec(vector) ?? [];
  const words = timerEvents.find(([pattern]) => pattern.test(event));
  if (number === undefined || words === undefined) return undefined;
  const setUp = facts.board.timers().find(({ timer }) => timer.number === Number(number));
  return {
    what: `${event.replace(...words)} of timer ${number}`,
    lines: [setUp && timerText(facts, setUp)],
  };
}

function usartTrigger(place: Place, { usarts }: AvrChip, vector: string): Trigger | undefined {
  for (const { number, vectors } of usarts) {
    if (vector === vectors.receive)
      return {
        what: `a byte has come in at UART ${number}`,
        lines: ["It is gone when two more have come in."],
      };
    if (vector === vectors.empty)
      return {
        what: `UART ${number} can take the next byte`,
        lines: [
          "It runs again at once until a byte is written or its interrupt is switched off.",
          byteBudget(place),
        ],
      };
    if (vector === vectors.sent) return { what: `UART ${number} has sent everything`, lines: [] };
  }
  return undefined;
}

/** How soon the mouse's next clock edge may come. */
function clockBudget({ facts }: Place, pin: string): string | undefined {
  if (facts.ps2.clock?.pin !== pin) return undefined;
  const period = quantity("ps2.clock-period");
  if (period?.min === undefined) return undefined;
  const hz = facts.board.clock?.hz;
  const cycles = hz === undefined ? "" : `, ${plain((period.min * hz) / 1e6, 0)} cycles at ${clockText(hz)},`;
  return `The next clock of the mouse may fall ${period.min} us later${cycles} and has to find this handler done (${formatSources(period.sources)}).`;
}

function byteBudget({ facts }: Place): string | undefined {
  const baud = facts.serial.wantedBaud?.baud;
  return baud === undefined ? undefined : `At ${baud} baud a bit lasts ${plain(1e6 / baud, 1)} us.`;
}
