import { writeFileSync } from "node:fs";
import { publishedSchema } from "../../src-core/service/settings-schema.ts";

/** Run by the build: writes the schema of edgewise.json to the file that the package contributes to editors. */
writeFileSync(process.argv[2] ?? "edgewise.schema.json", publishedSchema());
