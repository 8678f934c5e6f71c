import { formatAmong } from "../format-among.ts";

export type Format = "text" | "json" | "sarif" | "github" | "junit";

export const formats: readonly Format[] = ["text", "json", "sarif", "github", "junit"];

/** Throws `CannotDo` for a name that is no format. */
export function formatNamed(name: string): Format {
  return formatAmong(formats, name);
}
