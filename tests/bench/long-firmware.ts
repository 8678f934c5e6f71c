import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/**
 * One C file of about `lines` lines made from the sources of a sample firmware: its headers and sources, then
 * copies of them, one file after the other, in which what they define is renamed.
 */
export function longFirmware(folder: string, lines: number): string {
  const names = readdirSync(folder).sort();
  const read = (name: string) => withoutOwnIncludes(readFileSync(join(folder, name), "utf8"));
  const headers = inDependencyOrder(
    folder,
    names.filter((name) => name.endsWith(".h")),
  ).map(read);
  const sources = names.filter((name) => name.endsWith(".c")).map(read);
  const pieces = [...headers, ...sources];
  const defined = namesDefinedIn(pieces.join("\n"));
  let firmware = pieces.join("\n");
  for (let copy = 2; ; copy++) {
    for (const piece of pieces) {
      if (firmware.split("\n").length >= lines) return firmware;
      firmware += `\n${renamed(piece, defined, copy)}`;
    }
  }
}

/** Headers that include others come after them; a cycle keeps the order of names. */
function inDependencyOrder(folder: string, headers: readonly string[]): readonly string[] {
  const done = new Set<string>();
  const visit = (name: string): void => {
    if (done.has(name) || !headers.includes(name)) return;
    const text = readFileSync(join(folder, name), "utf8");
    done.add(name);
    for (const [, included = ""] of text.matchAll(/^\s*#\s*include\s*"([^"]+)"/gm)) visit(included);
    done.delete(name);
    done.add(name);
  };
  for (const name of headers) visit(name);
  return [...done];
}

function withoutOwnIncludes(text: string): string {
  return text.replace(/^\s*#\s*include\s*"[^"]*".*$/gm, "");
}

/** Functions, file-scope variables, enumerators and macros of the sample; its style puts them at the start of a line. */
function namesDefinedIn(text: string): ReadonlySet<string> {
  const names = [
    ...text.matchAll(/^\s*#\s*define\s+(\w+)/gm),
    ...text.matchAll(/^(?:[A-Za-z_][\w\s*]*?[\s*])?(\w+)\s*(?:\[[^\]]*\])*\s*(?:\(|=|;)/gm),
    ...text.matchAll(/^\s+([A-Z][A-Z0-9_]*)\s*(?:=[^,;\n]*)?,?$/gm),
    ...text.matchAll(/\bstruct\s+(\w+)\s*\{/g),
    ...text.matchAll(/^\}\s*(\w+)\s*;/gm),
  ].map(([, name = ""]) => name);
  return new Set(names.filter((name) => name !== "ISR" && name !== "F_CPU"));
}

function renamed(text: string, defined: ReadonlySet<string>, copy: number): string {
  return text
    .replace(/^ISR\((\w+)\)/gm, (_, vector: string) => `void copy_${copy}_${vector}(void)`)
    .replace(/\b[A-Za-z_]\w*\b/g, (word) => (defined.has(word) ? `${word}_${copy}` : word));
}
