import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { rulePages } from "../../src-core/present/markdown/rule-pages.ts";
import { referencePages } from "../../src-core/present/reference/reference-pages.ts";
import { referenceNames } from "../../src-core/service/reference-names.ts";
import { ruleCases } from "../../src-core/service/rule-cases.ts";
import { loadGrammar } from "../load-grammar.ts";

/** `npm run docs`, run in the package's root: writes the pages about rules, and the reference, anew. */
const pages = [...rulePages(ruleCases(await loadGrammar())), ...referencePages(referenceNames)];
for (const folder of ["docs/rules", "docs/reference"]) rmSync(folder, { recursive: true, force: true });
for (const [path, text] of pages) {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
}
