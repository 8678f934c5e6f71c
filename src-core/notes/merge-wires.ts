import type { BoardNote, Note, Ps2Note, SerialNote } from "./note.ts";
import { type NoteProblem, noteProblem } from "./note-problem.ts";
import { formatClock } from "./values/clock.ts";
import { formatScale } from "./values/scale.ts";
import type { Said, Wires } from "./wires.ts";

export interface MergedWires {
  readonly wires: Wires;
  /** `note/mismatch` where two notes say different things. */
  readonly problems: readonly NoteProblem[];
}

/** What notes and settings say together: the first note wins over later ones, every note over the settings. */
export function mergeWires(notes: Iterable<Note>, settings: Wires): MergedWires {
  const all = [...notes];
  const problems: NoteProblem[] = [];
  const pick = <T extends string | number>(
    what: string,
    said: readonly (Said<T> | undefined)[],
    otherwise: Said<T> | undefined,
    show: (value: T) => string = String,
  ) => firstSaid(what, said, otherwise, show, problems);
  const boards = all.filter((note): note is BoardNote => note.kind === "board").map((note) => note.board);
  const ports = all.filter((note): note is Ps2Note => note.kind === "ps2").map((note) => note.ps2);
  const sides = all.filter((note): note is SerialNote => note.kind === "serial").map((note) => note.serial);
  const { board, ps2, serial } = settings;
  const uarts = sides.map((side) => side.uart);
  const pins = sides.map((side) => side.tx);
  const uartSaid = uarts.some((said) => said !== undefined);
  const pinSaid = pins.some((said) => said !== undefined);
  const wires: Wires = {
    board: {
      chip: pick(
        "the chip",
        boards.map((each) => each.chip),
        board.chip,
      ),
      clockHz: pick(
        "the clock",
        boards.map((each) => each.clockHz),
        board.clockHz,
        formatClock,
      ),
    },
    ps2: {
      clock: pick(
        "the pin of the PS/2 clock",
        ports.map((each) => each.clock),
        ps2.clock,
      ),
      data: pick(
        "the pin of the PS/2 data line",
        ports.map((each) => each.data),
        ps2.data,
      ),
      pullups: pick(
        "the pull-ups",
        ports.map((each) => each.pullups),
        ps2.pullups,
      ),
    },
    serial: {
      // A note that names one way of sending takes the settings' other way out.
      uart: pick("the UART", uarts, pinSaid ? undefined : serial.uart),
      tx: pick("the pin that sends", pins, uartSaid ? undefined : serial.tx),
      rts: pick(
        "the pin of RTS",
        sides.map((each) => each.rts),
        serial.rts,
      ),
      dtr: pick(
        "the pin of DTR",
        sides.map((each) => each.dtr),
        serial.dtr,
      ),
      report: pick(
        "the report layout",
        sides.map((each) => each.report),
        serial.report,
      ),
      shifter: pick(
        "the level shifter",
        sides.map((each) => each.shifter),
        serial.shifter,
      ),
      baud: pick(
        "the speed",
        sides.map((each) => each.baud),
        serial.baud,
      ),
      line: pick(
        "the line format",
        sides.map((each) => each.line),
        serial.line,
      ),
      scale: pick(
        "the scale",
        sides.map((each) => each.scale),
        serial.scale,
        formatScale,
      ),
    },
  };
  return { wires: oneWayToSend(wires, problems), problems };
}

function firstSaid<T extends string | number>(
  what: string,
  said: readonly (Said<T> | undefined)[],
  otherwise: Said<T> | undefined,
  show: (value: T) => string,
  problems: NoteProblem[],
): Said<T> | undefined {
  const [first, ...later] = said.filter((each) => each !== undefined);
  if (first === undefined) return otherwise;
  for (const other of later) {
    if (other.value === first.value) continue;
    const message = `two notes disagree on ${what}: \`${show(other.value)}\` here, \`${show(first.value)}\` elsewhere`;
    const related = [{ span: first.span, message: `\`${show(first.value)}\` is said here` }];
    problems.push(noteProblem("note/mismatch", other.span, message, { related }));
  }
  return first;
}

/** Reports leave through a UART or through a pin; where two notes say both, the first one counts. */
function oneWayToSend(wires: Wires, problems: NoteProblem[]): Wires {
  const { uart, tx } = wires.serial;
  // Within edgewise.json the schema has said it already.
  if (uart === undefined || tx === undefined || tx.span.file.endsWith(".json")) return wires;
  const message = `another note names a UART: keep \`uart=${uart.value}\` or \`tx=${tx.value}\``;
  const related = [{ span: uart.span, message: `\`uart=${uart.value}\` is said here` }];
  problems.push(noteProblem("note/mismatch", tx.span, message, { related }));
  return { ...wires, serial: { ...wires.serial, tx: undefined } };
}
