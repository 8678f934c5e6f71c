import { lexFile } from "../lexer/lex-file.ts";
import { readDefine } from "./define.ts";
import { builtInMacros, type Macro } from "./macro.ts";
import type { PreprocessRequest } from "./preprocess.ts";

/** The pseudo-file whose text are the macros from outside. */
const OUTSIDE = "<given macros>";
const KEPT = 32;

/** The macros that stand before the first line: those of the language and those given from outside. */
export function initialMacros(
  request: Pick<PreprocessRequest, "defines" | "language" | "cache">,
): ReadonlyMap<string, Macro> {
  const lines = Object.entries(request.defines).map(
    ([name, body]) => `#define ${oneLine(name)} ${oneLine(body)}\n`,
  );
  const text = lines.join("");
  const { initial } = request.cache;
  const key = `${request.language}\n${text}`;
  const kept = initial.get(key);
  if (kept !== undefined) return kept;
  const macros = new Map(builtInMacros().map((macro) => [macro.name, macro]));
  for (const piece of lexFile(OUTSIDE, text, request.language).pieces) {
    const macro = piece.kind === "directive" ? readDefine(piece, true).macro : undefined;
    if (macro !== undefined) macros.set(macro.name, macro);
  }
  if (initial.size >= KEPT) initial.clear();
  initial.set(key, macros);
  return macros;
}

function oneLine(text: string): string {
  return text.replace(/[\r\n]+/g, " ");
}
