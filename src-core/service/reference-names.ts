import { settingsSchema } from "../notes/settings/schema.ts";
import { vocabulary } from "./vocabulary.ts";

/** What the pages of the reference name beyond the model. */
export const referenceNames = { vocabulary, schema: settingsSchema(vocabulary) };
