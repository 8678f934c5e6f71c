import { nearestNames } from "../../../src-core/near-names.ts";
import { CannotDo } from "../cannot-do.ts";

export type Format = "text" | "json";

export const formats: readonly Format[] = ["text", "json"];

/** Throws `CannotDo` for a name that is no format. */
export function formatNamed(name: string): Format {
  const format = formats.find((one) => one === name);
  if (format !== undefined) return format;
  const [near] = nearestNames(name, formats, 1);
  const hint = near === undefined ? `it can be ${formats.join(" or ")}` : `did you mean ${near}?`;
  throw new CannotDo(`--format cannot be "${name}"; ${hint}`);
}
