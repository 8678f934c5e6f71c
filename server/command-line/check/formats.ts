import { formatAmong } from "../format-among.ts";

export type Format = "text" | "json";

export const formats: readonly Format[] = ["text", "json"];

/** Throws `CannotDo` for a name that is no format. */
export function formatNamed(name: string): Format {
  return formatAmong(formats, name);
}
