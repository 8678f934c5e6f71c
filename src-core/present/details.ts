import type { Limit, Measured, Span } from "../finding.ts";
import type { FileLines } from "./line-index.ts";
import { limitInWords, measuredInWords } from "./quantity.ts";

/** "port/clock.c:3:12". */
export function placedInWords({ file, start }: Span, lines: FileLines): string {
  const { line, column } = lines.of(file).placeOf(start);
  return `${file}:${line}:${column}`;
}

/** What was found, what is allowed and who says so: a line each of what is known. */
export function boundsInWords({
  measured,
  limit,
  source,
}: {
  readonly measured?: Measured | undefined;
  readonly limit?: Limit | undefined;
  readonly source?: string | undefined;
}): readonly string[] {
  const bound = limit === undefined ? undefined : limitInWords(limit);
  return [
    ...(measured === undefined ? [] : [`found ${measuredInWords(measured)}`]),
    ...(bound === undefined ? [] : [`limit ${bound}`]),
    ...(source === undefined ? [] : [`source ${source}`]),
  ];
}
