import { settingsSchema } from "../notes/settings/schema.ts";
import { vocabulary } from "./vocabulary.ts";

/** The JSON Schema of edgewise.json, as text to publish. */
export function publishedSchema(): string {
  return `${JSON.stringify(settingsSchema(vocabulary), undefined, 2)}\n`;
}
