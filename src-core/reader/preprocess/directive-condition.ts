import type { Span } from "../../finding.ts";
import type { DirectivePiece } from "../lexer/lexed-file.ts";
import { evaluateCondition } from "./condition.ts";
import type { CharacterModel } from "./condition-values.ts";
import type { Expander } from "./expander.ts";
import { type HeaderName, parseHeaderName } from "./header-name.ts";
import type { MacroTable } from "./macro-table.ts";

export interface ConditionSurroundings {
  readonly expander: Expander;
  readonly table: MacroTable;
  readonly isCpp: boolean;
  hasInclude(header: HeaderName, isNext: boolean): boolean;
}

export interface BranchDecision {
  readonly isTrue: boolean;
  readonly problem: { readonly span: Span; readonly message: string } | undefined;
}

/** Names that `defined` knows though they are no macros. */
const OPERATOR_NAMES: ReadonlySet<string> = new Set(["__has_include", "__has_include_next"]);

/** Whether the branch that begins with this `#if`, `#ifdef`, `#elif`... is taken; no where it cannot be told. */
export function conditionOf(
  piece: DirectivePiece,
  name: string,
  surroundings: ConditionSurroundings,
): BranchDecision {
  const { table, expander } = surroundings;
  const isDefined = (macro: string) => table.get(macro) !== undefined || OPERATOR_NAMES.has(macro);
  if (name.endsWith("def")) {
    const operand = piece.tokens[0];
    if (operand?.kind !== "identifier") return problemAt(piece, `#${name} needs a name.`);
    return { isTrue: isDefined(operand.text) !== name.endsWith("ndef"), problem: undefined };
  }
  const result = expander.readingList(piece.tokens, () =>
    evaluateCondition({
      next: () => expander.expanded(),
      raw: () => expander.raw(),
      isDefined,
      hasInclude: (spelling, isNext) => {
        const header = parseHeaderName(spelling);
        return header !== undefined && surroundings.hasInclude(header, isNext);
      },
      characters: characterModel(table),
      isCpp: surroundings.isCpp,
    }),
  );
  if (result.kind === "problem") return problemAt(piece, result.message);
  return { isTrue: result.value.value !== 0n, problem: undefined };
}

function problemAt(piece: DirectivePiece, message: string): BranchDecision {
  const last = piece.tokens.at(-1) ?? piece.name ?? piece.hash;
  const span = { file: piece.hash.file, start: piece.hash.start, end: last.end };
  return { isTrue: false, problem: { span, message } };
}

/** Taken from the macros that compilers predefine about their types. */
function characterModel(table: MacroTable): CharacterModel {
  const bytes = (name: string, otherwise: number) => {
    const text = table.get(name)?.body[0]?.text ?? "";
    return (/^[1248]$/.test(text) ? Number.parseInt(text, 10) : otherwise) * 8;
  };
  return {
    charSigned: table.get("__CHAR_UNSIGNED__") === undefined,
    intBits: bytes("__SIZEOF_INT__", 4),
    wideBits: bytes("__SIZEOF_WCHAR_T__", 4),
  };
}
