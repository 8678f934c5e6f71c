// When RTS comes on, a serial mouse says which it is: M with two buttons, M3 with a third, MZ@ and three zeros with a wheel.
// The PC takes the layout of the reports from that, and no driver for a mouse that it does not know.
//
// The rule looks at constant bytes that are sent one after the other, by a UART, a serial class or bit by bit, and begin with
// M, or else at those that are sent because of RTS. They have to be what mice with the layout of the note `report=` say. An id
// string of Plug and Play may follow. Where one of several answers is right, or a byte is not known, nothing is said.

import {
  codesOf,
  type Identification,
  knownSequences,
  startsWith,
} from "../../facts/serial/identification.ts";
import type { RunByte, SentRun } from "../../facts/serial/serial-facts.ts";
import { bytesText, hexText } from "../../figures.ts";
import type { Fix } from "../../finding.ts";
import { formatSources } from "../../model/sources.ts";
import { literalToken, replaced, spanOf } from "../literal.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";

export const identWrong: Rule = {
  id: "serial/ident-wrong",
  title: "An identification that the PC does not know",
  severity: "error",
  why: "The driver takes the adapter for another mouse, whose reports it reads wrongly, or for none at all.",
  wrong: firmwareWith("UDR0 = 'M';", "UDR0 = 'N';"),
  right: rightFirmware,
  source: "the documents of the layout that the notes name; each finding says which",
  *check(facts) {
    const identification = facts.serial.identification;
    if (identification === undefined) return;
    const { answers, usual, said, sources, layout, mayBeSentUnseen } = identification;
    const judged = answers.map((run) => judge(run, identification));
    if (judged.some((each) => each === "right" || each === "not known")) return;
    // Answers without M count for as long as no M may come by another way.
    if (answers.every((run) => codesOf(run, layout)[0] !== usual[0]) && mayBeSentUnseen) return;
    for (const wrong of judged) {
      if (wrong === "right" || wrong === "not known") continue;
      const { run, at, wanted } = wrong;
      const says = bytesText(codesOf(run, layout).slice(0, LONGEST_TOLD));
      yield {
        span: spanOf(at.span),
        message: `the adapter says ${says} when it is asked who it is; a ${said.value} mouse says ${bytesText(usual)}`,
        measured: { value: at.byte, unit: "hex" },
        source: formatSources(sources),
        related: [{ span: spanOf(said.span), message: "the layout of the reports" }],
        fixes: fixFor(at, wanted),
      };
    }
  },
  judge: (trials) => draftsOfRuns("serial/ident-wrong", trials),
};

/** Bytes of a long answer that a message quotes. */
const LONGEST_TOLD = 8;

interface Wrong {
  readonly run: SentRun;
  /** The first byte that is wrong, or the last before one that is missing. */
  readonly at: RunByte;
  /** What should be there; undefined where something is missing or too much. */
  readonly wanted: number | undefined;
}

function judge(run: SentRun, { layout, sequences, usual }: Identification): Wrong | "right" | "not known" {
  const codes = codesOf(run, layout);
  const last = run.bytes.at(-1);
  const right = sequences.find((sequence) => startsWith(codes, sequence));
  if (right !== undefined) {
    const other = knownSequences.find(
      (sequence) => sequence.length > right.length && startsWith(codes, sequence),
    );
    const at = run.bytes[right.length];
    return other === undefined || at === undefined ? "right" : { run, at, wanted: undefined };
  }
  const index = codes.findIndex((code, place) => code !== usual[place]);
  if (index >= 0 && index < usual.length) {
    const at = run.bytes[index];
    return at === undefined ? "not known" : { run, at, wanted: usual[index] };
  }
  // All that is there is right, but it ends too soon.
  if (!run.closed || last === undefined) return "not known";
  return { run, at: last, wanted: undefined };
}

/** The right byte in the place of a wrong one, its top bit as it was. */
function fixFor({ byte, expression }: RunByte, wanted: number | undefined): readonly Fix[] {
  const token = expression && literalOf(expression);
  if (wanted === undefined || token === undefined) return [];
  const topBit = byte & 0x80;
  const text =
    topBit === 0 && isLetter(wanted) ? `'${String.fromCharCode(wanted)}'` : hexText(wanted | topBit);
  return [{ title: `Send ${text}`, edits: [replaced(token, text)] }];
}

/** A number, or a character that stands for one. */
function literalOf(expression: NonNullable<RunByte["expression"]>) {
  if (expression.kind === "convert") return literalOf(expression.operand);
  const { first, last } = expression.at;
  if (expression.kind === "integer" && first === last && first.kind === "character") return first;
  return literalToken(expression);
}

function isLetter(code: number): boolean {
  return /^[0-9A-Z@]$/.test(String.fromCharCode(code));
}
