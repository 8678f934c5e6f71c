import type { Span } from "../../finding.ts";
import { formatSources } from "../../model/sources.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { FoundBit } from "../../trial-details.ts";
import { innermost } from "../around.ts";
import { type Explanation, explanation, holds } from "../explanation.ts";
import type { Place } from "../place.ts";
import { wordOf } from "./report-bits.ts";
import { type ReportFunction, reportFunctions } from "./report-function.ts";

/** The name of an encoder or decoder: the layout that its note names, beside the one that its code was found to make. */
export function explainReportLayout(place: Place): Explanation | undefined {
  for (const subject of reportFunctions(place.facts)) {
    const span = nameOf(subject.function, place);
    if (span === undefined) continue;
    const { layout, note } = subject;
    const tables = note.kind === "encodes" ? encoderTable(subject, place) : decoderTable(subject);
    const verb = note.kind === "encodes" ? "builds" : "takes apart";
    return explanation(span, `${subject.function.name} ${verb} a ${layout.name} report`, [
      `\`\`\`text\n${tables.rows.join("\n")}\n\`\`\``,
      tables.told,
      `Source: ${formatSources(layout.sources)}.`,
    ]);
  }
  return undefined;
}

/** The function's name, where it is defined, declared in another unit, or called. */
function nameOf(symbol: FunctionSymbol, place: Place): Span | undefined {
  const { file, offset, facts, unit } = place;
  const isIt = (other: FunctionSymbol): boolean =>
    other.name === symbol.name && (other === symbol || facts.program.definitionOf(other) === symbol);
  for (const { at } of [symbol, ...unit.typed.functions.filter(isIt)]) {
    const span = visibleRange(at.first, at.last);
    if (holds(span, file, offset)) return span;
  }
  const at = innermost(place);
  return at?.expression.kind === "function" && isIt(at.expression.function) ? at.span : undefined;
}

interface Table {
  readonly rows: readonly string[];
  readonly told: string | undefined;
}

function encoderTable(subject: ReportFunction, { tried }: Place): Table {
  const { layout } = subject;
  const { file } = visibleRange(subject.function.at.first, subject.function.at.last);
  const { qualifiedName } = subject.function;
  const known = tried?.find((each) => each.subject.file === file && each.subject.name === qualifiedName);
  const required = wantedWords(subject);
  if (known === undefined)
    return {
      rows: rowsOf(required, undefined, layout.dataBits),
      told: "The layout that is required; what the code makes is not known before it was run.",
    };
  if (!known.wasRun || known.bits.length === 0)
    return {
      rows: rowsOf(required, undefined, layout.dataBits),
      told: "The layout that is required; the function could not be run to the end, so what it makes is not known.",
    };
  const wrong = known.bits.flat().filter(({ isRequired }) => !isRequired).length;
  const bits = wrong === 1 ? "1 bit differs" : `${wrong} bits differ`;
  const told = wrong === 0 ? "The code makes every bit as required." : `${bits}, marked \`^\`.`;
  return { rows: rowsOf(required, known.bits, layout.dataBits), told };
}

function decoderTable(subject: ReportFunction): Table {
  const rows = rowsOf(wantedWords(subject), undefined, subject.layout.dataBits);
  return { rows, told: undefined };
}

/** Per byte, from bit 0 upwards. */
function wantedWords({ layout }: ReportFunction): readonly (readonly string[])[] {
  return layout.bytes.map((slots) => slots.map(wordOf));
}

/** One column for each bit, the highest first, as wide as the widest word of any byte. */
function rowsOf(
  required: readonly (readonly string[])[],
  found: readonly (readonly FoundBit[])[] | undefined,
  dataBits: number,
): readonly string[] {
  const bits = Array.from({ length: dataBits }, (_, index) => dataBits - 1 - index);
  const widths = new Map(
    bits.map((bit) => {
      const words = required.map((row) => row[bit] ?? "");
      const others = (found ?? []).map((row) => row[bit]?.word ?? "");
      return [bit, Math.max(String(bit).length, ...[...words, ...others].map(({ length }) => length))];
    }),
  );
  const line = (head: string, what: string, cell: (bit: number) => string): string => {
    const cells = bits.map((bit) => cell(bit).padEnd(widths.get(bit) ?? 0));
    return `${head.padEnd(6)}  ${found === undefined ? "" : `${what.padEnd(8)}  `}${cells.join("  ")}`.trimEnd();
  };
  return [
    line("bit", "", String),
    ...required.flatMap((words, byte) => {
      const wanted = line(`byte ${byte + 1}`, "required", (bit) => words[bit] ?? "");
      const is = found?.[byte];
      if (is === undefined) return [wanted];
      const marks = line("", "", (bit) =>
        is[bit]?.isRequired === false ? "^".repeat(is[bit].word.length) : "",
      );
      return [wanted, line("", "found", (bit) => is[bit]?.word ?? ""), ...(marks === "" ? [] : [marks])];
    }),
  ];
}
