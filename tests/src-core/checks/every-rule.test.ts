import { expect, test, vi } from "vitest";
import { rules } from "../../../src-core/checks/registry.ts";
import { ruleIds } from "../../../src-core/rule-ids.ts";
import { suitesOfAll } from "./snippets-of-all.ts";

vi.mock("./harness.ts", async (load) => (await import("./snippets-of-all.ts")).collecting(load));

/** Snippets of each kind that a rule has to be shown with, in different styles. */
const enough = 5;

const suites = await suitesOfAll();

test("every rule of the catalogue is checked", () => {
  expect(rules.map(({ id }) => id).toSorted()).toEqual(ruleIds.toSorted());
});

test("every rule has a suite with enough wrong and right snippets", () => {
  const countOf = (id: string, kind: "wrong" | "right"): number =>
    suites
      .filter(({ rule }) => rule.id === id)
      .reduce((sum, { snippets }) => sum + Object.keys(snippets[kind]).length, 0);
  const short = rules
    .map(({ id }) => ({ id, wrong: countOf(id, "wrong"), right: countOf(id, "right") }))
    .filter(({ wrong, right }) => wrong < enough || right < enough);
  expect(short).toEqual([]);
});
