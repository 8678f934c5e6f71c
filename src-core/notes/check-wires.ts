import { type NoteProblem, noteProblem, replacement } from "./note-problem.ts";
import { listed, suggestionFor } from "./suggestion.ts";
import { chipNamed } from "./values/chip.ts";
import type { ChipTerm, Vocabulary } from "./vocabulary.ts";
import type { Said, Wires } from "./wires.ts";

/**
 * Pins and UARTs that the chip does not have (`note/unknown-name`), in notes and in edgewise.json. Nothing where
 * the chip, or its pin table, is not known.
 */
export function checkWires(wires: Wires, vocabulary: Vocabulary): readonly NoteProblem[] {
  const chip = wires.board.chip && chipNamed(wires.board.chip.value, vocabulary);
  if (chip === undefined) return [];
  const { ps2, serial } = wires;
  const pins = [ps2.clock, ps2.data, serial.tx, serial.rts, serial.dtr];
  const problems = pins.map((pin) => checkPin(pin, chip));
  return [...problems, checkUart(serial.uart, chip)].filter((problem) => problem !== undefined);
}

function checkPin(pin: Said<string> | undefined, chip: ChipTerm): NoteProblem | undefined {
  if (pin === undefined || chip.pins.length === 0) return undefined;
  const names = chip.pins.map((each) => each.name);
  // `pd2` and `D2` are understood as well.
  const upper = pin.value.toUpperCase();
  if (names.includes(upper) || names.includes(upper.replace(/^D(?=\d)/, ""))) return undefined;
  const { phrase, best } = suggestionFor(pin.value, names);
  const message = `\`${chip.name}\` has no pin \`${pin.value}\`${phrase}`;
  return noteProblem("note/unknown-name", pin.span, message, {
    fixes: best === undefined ? [] : [replacement(pin.span, quotedAs(pin, best))],
  });
}

/** In edgewise.json the span of a text holds its quotes. */
function quotedAs(pin: Said<string>, best: string): string {
  return pin.span.end - pin.span.start === pin.value.length ? best : JSON.stringify(best);
}

function checkUart(uart: Said<number> | undefined, chip: ChipTerm): NoteProblem | undefined {
  if (uart === undefined || chip.uarts === undefined || chip.uarts.includes(uart.value)) return undefined;
  const known =
    chip.uarts.length === 0
      ? "it has none; name the pin that sends with `tx=`"
      : `it has ${listed(chip.uarts.map(String), "and")}`;
  const message = `\`${chip.name}\` has no UART \`${uart.value}\`: ${known}`;
  return noteProblem("note/unknown-name", uart.span, message);
}
