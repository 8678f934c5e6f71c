import { outermostUse, type Token } from "../tokens.ts";
import type { Chunk, ChunkCache, ChunkMaker } from "./chunk.ts";
import { DeclarationScan } from "./declaration-scan.ts";

export interface SplitInput {
  /** Expanded tokens of a unit. */
  readonly tokens: readonly Token[];
  /** Text of a file of the workspace, to see what stands at the beginning of a line. */
  readonly textOf: (file: string) => string | undefined;
  readonly cache: ChunkCache;
}

/** How often a declaration that never closes is looked for before line beginnings alone decide. */
const RETRIES = 16;
const NO_DECLARATION: ReadonlySet<string> = new Set([
  "case",
  "default",
  "public",
  "private",
  "protected",
  "else",
]);

/**
 * Splits a unit into its top-level declarations. Every token is in exactly one chunk, in order. Where a brace is
 * never closed, a word at the very beginning of a line is taken for the next declaration, so that what is being
 * typed does not swallow the rest of the file.
 */
export function splitChunks(input: SplitInput): readonly Chunk[] {
  const key = input.tokens.at(-1)?.file ?? "";
  return input.cache.split(key, (chunkOf) => split(input, chunkOf));
}

function split(input: SplitInput, chunkOf: ChunkMaker): readonly Chunk[] {
  const { tokens } = input;
  const chunks: Chunk[] = [];
  let start = 0;
  let retries = 0;
  while (start < tokens.length) {
    const whole = retries < RETRIES ? declarationEnd(tokens, start) : -1;
    if (whole < 0) retries += 1;
    const end = whole < 0 ? recoveredEnd(input, start) : whole;
    chunks.push(chunkOf(tokens, start, end));
    start = end;
  }
  return chunks;
}

/** Index behind the declaration's last token; -1 where a brace stays open to the end of the unit. */
function declarationEnd(tokens: readonly Token[], start: number): number {
  const scan = new DeclarationScan();
  for (let index = start; index < tokens.length; index += 1) {
    const token = tokens[index];
    if (token === undefined) break;
    const isStray = token.text === "}" && !scan.isInBraces() && index > start;
    if (isStray) return index;
    if (scan.isLast(token)) return index + 1;
  }
  return scan.isInBraces() ? -1 : tokens.length;
}

/** Like `declarationEnd`, but a declaration that begins a line ends the one before. */
function recoveredEnd(input: SplitInput, start: number): number {
  const { tokens } = input;
  const scan = new DeclarationScan();
  for (let index = start; index < tokens.length; index += 1) {
    const token = tokens[index];
    if (token === undefined) break;
    if (index > start && scan.isInBraces() && beginsDeclaration(input, index)) return index;
    if (scan.isLast(token)) return index + 1;
  }
  return tokens.length;
}

function beginsDeclaration({ tokens, textOf }: SplitInput, index: number): boolean {
  const token = tokens[index];
  if (token?.kind !== "identifier" || !token.space || NO_DECLARATION.has(token.text)) return false;
  if (tokens[index + 1]?.text === ":") return false;
  const { file, start } = token.macro === undefined ? token : outermostUse(token.macro).call;
  if (start === 0) return true;
  return textOf(file)?.charCodeAt(start - 1) === 10;
}
