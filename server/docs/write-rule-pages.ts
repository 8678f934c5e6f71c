import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { rulePages } from "../../src-core/present/markdown/rule-pages.ts";
import { ruleCases } from "../../src-core/service/rule-cases.ts";
import { loadGrammar } from "../load-grammar.ts";

/** `npm run docs`, run in the package's root: writes the pages about rules anew. */
const pages = rulePages(ruleCases(await loadGrammar()));
rmSync("docs/rules", { recursive: true, force: true });
for (const [path, text] of pages) {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
}
