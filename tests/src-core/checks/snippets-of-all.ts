import { readdirSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import type { Rule } from "../../../src-core/checks/rule.ts";
import type { Snippets } from "./harness.ts";

/** A rule's suite as its test file hands it to `ruleTests`. */
export interface Suite {
  readonly rule: Rule;
  readonly snippets: Snippets;
}

const suites: Suite[] = [];

/** The harness with a `ruleTests` that only remembers; for `vi.mock` of `harness.ts`. */
export async function collecting<Harness>(load: () => Promise<Harness>): Promise<Harness> {
  return {
    ...(await load()),
    ruleTests: (rule: Rule, snippets: Snippets) => suites.push({ rule, snippets }),
  };
}

/** The suites of all rules, out of their test files. The harness has to be mocked with `collecting` before. */
export async function suitesOfAll(): Promise<readonly Suite[]> {
  const folder = resolve("tests/src-core/checks");
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".test.ts"))
    .map((name) => resolve(folder, name))
    .filter((path) => /^ruleTests\(/m.test(readFileSync(path, "utf8")))
    .sort();
  for (const path of files) await import(path);
  return suites;
}
