import type { At } from "../../../../src-core/reader/typed/nodes.ts";

/** A place in a source, as wide as it is long. */
export function place(start: number, text = "x"): At {
  const token = {
    file: "ferry.c",
    start,
    end: start + text.length,
    kind: "identifier",
    text,
    space: false,
    macro: undefined,
  } as const;
  return { first: token, last: token };
}
