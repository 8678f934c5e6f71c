import type { Edit, Fix, Span } from "../../finding.ts";
import type { Program, ProgramUnit } from "../../reader/program/program.ts";
import { type Token, visibleRange } from "../../reader/tokens.ts";
import type { TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { expressionsIn, operandsOf } from "../../reader/typed/walk.ts";
import { inserted } from "../literal.ts";

const BLOCK = "ATOMIC_BLOCK(ATOMIC_RESTORESTATE)";

/**
 * Statements that follow each other in one atomic block, with the header that it needs. Undefined where one of them does more
 * than take or set values, so that interrupts would be off for longer than anybody can tell here.
 */
export function atomicFix(program: Program, statements: readonly TypedStatement[]): Fix | undefined {
  const [first] = statements;
  const last = statements.at(-1);
  if (first === undefined || last === undefined) return undefined;
  if (statements.some((statement) => expressionsIn(statement).some(mayTakeLong))) return undefined;
  const unit = program.units.find(({ preprocessed }) => preprocessed.tokens.includes(first.at.first));
  if (unit === undefined) return undefined;
  const parts = statements.map((statement) => partOf(statement, unit));
  if (!parts.every((part) => part !== undefined)) return undefined;
  const { file, start } = visibleRange(first.at.first, first.at.last);
  const { end } = visibleRange(last.at.first, last.at.last);
  const header = headerFor(unit, file);
  if (header === undefined) return undefined;
  const declared = parts.map(({ declaration }) => declaration).join("");
  const [taken, ...others] = parts.map((part) => part.taken);
  const edits = [
    { span: taken ?? { file, start, end: start }, text: `${declared}${BLOCK} { ` },
    ...others.flatMap((span) => (span === undefined ? [] : [{ span, text: "" }])),
    inserted(file, end, " }"),
  ];
  return { title: "Turn interrupts off meanwhile", edits: [...header, ...edits] };
}

/** What a statement leaves in front of the block, so that it is known behind it, and what is taken from it for that. */
interface Part {
  readonly declaration: string;
  readonly taken: Span | undefined;
}

function partOf(statement: TypedStatement, unit: ProgramUnit): Part | undefined {
  const { first, last } = statement.at;
  if (first.macro !== undefined || last.macro !== undefined || last.text !== ";") return undefined;
  switch (statement.kind) {
    case "expression":
    case "return":
      return { declaration: "", taken: undefined };
    case "variables": {
      const [variable, ...others] = statement.variables;
      if (variable?.initializer?.kind !== "value" || others.length > 0) return undefined;
      const { type, storage, at, name } = variable;
      const isPlain = type.kind === "integer" || type.kind === "floating" || type.kind === "record";
      // `auto` needs its initialiser.
      if (!isPlain || type.const === true || storage !== "local" || first.text === "auto") return undefined;
      const words = wordsBetween(first, at.last, unit);
      if (words === undefined) return undefined;
      const taken = { file: first.file, start: first.start, end: at.last.start };
      return { declaration: `${words} ${name}; `, taken };
    }
    default:
      return undefined;
  }
}

/** What is written from one token up to another; undefined where a macro takes part in it. */
function wordsBetween(first: Token, end: Token, { preprocessed }: ProgramUnit): string | undefined {
  const from = preprocessed.tokens.indexOf(first);
  const tokens = preprocessed.tokens.slice(from, preprocessed.tokens.indexOf(end, from));
  if ([...tokens, end].some(({ macro }) => macro !== undefined)) return undefined;
  return tokens
    .map(({ text, space }) => (space ? ` ${text}` : text))
    .join("")
    .trim();
}

function mayTakeLong(expression: TypedExpression): boolean {
  switch (expression.kind) {
    case "call":
    case "method-call":
    case "new":
    case "delete":
    case "lambda":
    case "statement-value":
    case "unresolved":
      return true;
    default:
      return operandsOf(expression).some(mayTakeLong);
  }
}

/** Above the first declaration of the file; nothing where the block is known already. */
function headerFor({ preprocessed }: ProgramUnit, file: string): readonly Edit[] | undefined {
  if (preprocessed.macros.has("ATOMIC_BLOCK")) return [];
  const first: Token | undefined = preprocessed.tokens.find(
    (token) => token.file === file && token.macro === undefined,
  );
  return first && [inserted(file, first.start, "#include <util/atomic.h>\n")];
}
