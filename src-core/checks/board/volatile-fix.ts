import type { Edit, Fix } from "../../finding.ts";
import type { ProgramUnit } from "../../reader/program/program.ts";
import { isStandIn, type Token } from "../../reader/tokens.ts";
import type { At } from "../../reader/typed/nodes.ts";
import { inserted } from "../literal.ts";

/** Words that stand before the type. */
const STORAGE: ReadonlySet<string> = new Set([
  "static",
  "extern",
  "inline",
  "register",
  "thread_local",
  "const",
  "constexpr",
]);

/**
 * `volatile` in each of the declarations; undefined where a declaration declares something else as well, comes out of
 * a macro or stands in a built-in header, so that no edit would change this variable alone.
 */
export function volatileFix(
  units: readonly ProgramUnit[],
  name: string,
  declarations: readonly At[],
): Fix | undefined {
  const edits = new Map<string, Edit>();
  for (const at of declarations) {
    const edit = editFor(units, name, at);
    if (edit === undefined) return undefined;
    edits.set(`${edit.span.file} ${edit.span.start}`, edit);
  }
  return edits.size === 0 ? undefined : { title: `Make ${name} volatile`, edits: [...edits.values()] };
}

function editFor(units: readonly ProgramUnit[], name: string, at: At): Edit | undefined {
  if (at.first.macro !== undefined || isStandIn(at.first.file)) return undefined;
  const declaration = declarationAround(units, at.first);
  if (declaration === undefined) return undefined;
  const { tokens, nameAt } = declaration;
  const named = nameAt ?? tokens.findIndex((token) => token.text === name);
  const nameToken = tokens[named];
  if (nameToken === undefined || declaresMore(tokens, named)) return undefined;
  if (tokens.slice(0, named).some(({ text }) => text === "*" || text === "&" || text === "}")) {
    return inserted(nameToken.file, nameToken.start, "volatile ");
  }
  const type = tokens.find((token) => !STORAGE.has(token.text));
  return type && inserted(type.file, type.start, "volatile ");
}

interface Declaration {
  /** From its first token to the semicolon. */
  readonly tokens: readonly Token[];
  /** Index of the name, where `first` was the name. */
  readonly nameAt: number | undefined;
}

/** The tokens between the ends of the statements before and after. */
function declarationAround(units: readonly ProgramUnit[], first: Token): Declaration | undefined {
  for (const { preprocessed } of units) {
    const { tokens } = preprocessed;
    const at = tokens.indexOf(first);
    if (at < 0) continue;
    let from = at;
    while (from > 0 && !endsStatement(tokens, from - 1)) from--;
    let to = at;
    for (let depth = 0; to < tokens.length; to++) {
      const text = tokens[to]?.text;
      if (text === "{" || text === "(" || text === "[") depth++;
      if (text === "}" || text === ")" || text === "]") depth--;
      if (text === ";" && depth <= 0) break;
    }
    return { tokens: tokens.slice(from, to), nameAt: from === at ? undefined : at - from };
  }
  return undefined;
}

/** `;`, a brace, or the colon behind `public`. */
function endsStatement(tokens: readonly Token[], index: number): boolean {
  const text = tokens[index]?.text;
  if (text === ";" || text === "{" || text === "}") return true;
  return text === ":" && /^(public|private|protected)$/.test(tokens[index - 1]?.text ?? "");
}

/** A comma outside of brackets: a second name. */
function declaresMore(tokens: readonly Token[], from: number): boolean {
  let depth = 0;
  for (const { text } of tokens.slice(0, from)) if (text === ",") return true;
  for (const { text } of tokens.slice(from)) {
    if (text === "{" || text === "(" || text === "[") depth++;
    if (text === "}" || text === ")" || text === "]") depth--;
    if (text === "," && depth === 0) return true;
  }
  return false;
}
