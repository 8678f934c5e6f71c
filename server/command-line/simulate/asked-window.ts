import type { AskedWindow } from "../../../src-core/present/ribbon/time-window.ts";
import { CannotDo } from "../cannot-do.ts";

/** What `--from` and `--to` say, for a format that shows a part of a run; undefined without both. Throws `CannotDo`. */
export function askedWindow(options: ReadonlyMap<string, string>, format: string): AskedWindow | undefined {
  const asked = { from: milliseconds("from", options, format), to: milliseconds("to", options, format) };
  return asked.from === undefined && asked.to === undefined ? undefined : asked;
}

function milliseconds(
  name: string,
  options: ReadonlyMap<string, string>,
  format: string,
): number | undefined {
  const given = options.get(name);
  if (given === undefined) return undefined;
  if (format !== "svg") throw new CannotDo(`--${name} is for --format svg, not for ${format}`);
  const number = Number(given);
  if (given.trim() !== "" && Number.isFinite(number) && number >= 0) return number;
  throw new CannotDo(`--${name} needs a number of milliseconds from 0, not "${given}"`);
}
