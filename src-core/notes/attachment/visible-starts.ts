import type { Span } from "../../finding.ts";
import { visibleSpan } from "../../reader/tokens.ts";
import type { ReadUnit } from "./declared.ts";
import { type FileCode, firstFrom } from "./file-code.ts";

/**
 * By file, the offsets at which something begins that at least one unit has really read: tokens, macro calls and
 * `#define` lines. What starts nowhere here stands in a skipped group.
 */
export type VisibleStarts = ReadonlyMap<string, ReadonlySet<number>>;

/** Of the files in `files` only. */
export function visibleStarts(
  units: readonly ReadUnit[],
  files: ReadonlyMap<string, FileCode>,
): VisibleStarts {
  const starts = new Map<string, Set<number>>([...files.keys()].map((file) => [file, new Set()]));
  // Tokens of one file follow one another: its set is looked up once for all of them.
  let file: string | undefined;
  let ofFile: Set<number> | undefined;
  const add = (span: Span) => {
    if (span.file !== file) {
      file = span.file;
      ofFile = starts.get(file);
    }
    ofFile?.add(span.start);
  };
  for (const { preprocessed } of units) {
    for (const token of preprocessed.tokens) add(token.macro === undefined ? token : visibleSpan(token));
    for (const use of preprocessed.uses) add(use.call);
    for (const { definition } of preprocessed.definitions) {
      const code = definition === undefined ? undefined : files.get(definition.file);
      if (definition === undefined || code === undefined) continue;
      const line = code.directives[firstFrom(code.directives, definition.start) - 1];
      if (line !== undefined && definition.start < line.end) starts.get(definition.file)?.add(line.start);
    }
  }
  return starts;
}
