import type { MatrixChoice, Shard } from "../../../src-core/matrix-result.ts";
import { CannotDo } from "../cannot-do.ts";
import type { Arguments } from "../command.ts";
import { formatAmong } from "../format-among.ts";
import { seedOf } from "../seed-of.ts";

export const formats = ["text", "json", "junit"] as const;

export interface MatrixWishes {
  readonly paths: readonly string[];
  readonly choice: MatrixChoice;
  readonly shard: Shard | undefined;
  readonly seed: number;
  /** Threads; undefined for the usual number. */
  readonly workers: number | undefined;
  readonly format: (typeof formats)[number];
  /** File to write instead of standard output; relative to the working folder. */
  readonly output: string | undefined;
}

/** Throws `CannotDo` for a value that means nothing. */
export function wishesOf({ operands, options }: Arguments): MatrixWishes {
  return {
    paths: operands.length === 0 ? ["."] : operands,
    choice: {
      strokes: namesIn(options.get("strokes")),
      mice: namesIn(options.get("mice")),
      pcs: namesIn(options.get("pcs")),
    },
    shard: shardOf(options.get("shard")),
    seed: seedOf(options.get("seed")),
    workers: workersOf(options.get("workers")),
    format: formatAmong(formats, options.get("format") ?? "text"),
    output: options.get("output"),
  };
}

function namesIn(text: string | undefined): readonly string[] | undefined {
  return text?.split(",").map((name) => name.trim());
}

function shardOf(text: string | undefined): Shard | undefined {
  if (text === undefined) return undefined;
  const [, part, parts] = /^(\d{1,6})\/(\d{1,6})$/.exec(text) ?? [];
  const shard = { part: Number(part), parts: Number(parts) };
  if (shard.part >= 1 && shard.part <= shard.parts) return shard;
  throw new CannotDo(`--shard needs a part and how many there are, such as 1/4 up to 4/4, not "${text}"`);
}

function workersOf(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  if (!/^[1-9]\d{0,2}$/.test(text))
    throw new CannotDo(`--workers needs a whole number from 1 to 999, not "${text}"`);
  return Number(text);
}
