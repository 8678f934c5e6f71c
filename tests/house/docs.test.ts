import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { expect, test } from "vitest";
import { rulePages } from "../../src-core/present/markdown/rule-pages.ts";
import { referencePages } from "../../src-core/present/reference/reference-pages.ts";
import { referenceNames } from "../../src-core/service/reference-names.ts";
import { ruleCases } from "../../src-core/service/rule-cases.ts";
import { loadGrammar } from "../src-core/reader/syntax/load-grammar.ts";

const cases = ruleCases(await loadGrammar());
const pages = new Map([...rulePages(cases), ...referencePages(referenceNames)]);

test.each(["docs/rules", "docs/reference"])("%s is what `npm run docs` writes", (folder) => {
  const committed = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => /\.(md|svg)$/.test(name))
    .map((name) => `${folder}/${name.replaceAll("\\", "/")}`);
  const written = [...pages.keys()].filter((path) => path.startsWith(`${folder}/`));
  expect(committed.toSorted()).toEqual(written.toSorted());
  for (const path of written) expect(readFileSync(path, "utf8"), path).toBe(pages.get(path));
});

test("every link of every page, and of the papers beside them, leads to a file", () => {
  const papers = [...pages.keys()]
    .filter((path) => path.endsWith(".md"))
    .concat(["README.md", "DEVELOPERS.md", "CHANGELOG.md", "docs/first-hour.md"]);
  const links = papers.flatMap((path) =>
    [...readFileSync(path, "utf8").matchAll(/\]\(([^)#]+)(?:#[^)]*)?\)/g)].map(
      ([, to = ""]) => [path, to] as const,
    ),
  );
  expect(links.length).toBeGreaterThan(cases.length);
  const broken = links.filter(([path, to]) => !existsSync(resolve(join(dirname(path), to))));
  expect(broken).toEqual([]);
});

test("every page says of its example what the rule finds", () => {
  for (const { rule, said } of cases) {
    expect(
      said.findings.map(({ rule: id }) => id),
      rule.id,
    ).toContain(rule.id);
  }
});
