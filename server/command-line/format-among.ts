import { nearestNames } from "../../src-core/near-names.ts";
import { CannotDo } from "./cannot-do.ts";

/** The format of this name; throws `CannotDo` for a name that is none of `formats`. */
export function formatAmong<Format extends string>(formats: readonly Format[], name: string): Format {
  const format = formats.find((one) => one === name);
  if (format !== undefined) return format;
  const [near] = nearestNames(name, formats, 1);
  const hint = near === undefined ? `it can be ${formats.join(" or ")}` : `did you mean ${near}?`;
  throw new CannotDo(`--format cannot be "${name}"; ${hint}`);
}
