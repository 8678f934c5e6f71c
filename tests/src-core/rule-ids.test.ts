import { describe, expect, it } from "vitest";
import { rules } from "../../src-core/checks/registry.ts";
import { ruleIds } from "../../src-core/rule-ids.ts";

describe("the ids of the catalogue", () => {
  it("are `group/name`, each once", () => {
    expect(ruleIds).toHaveLength(46);
    expect(new Set(ruleIds).size).toBe(ruleIds.length);
    for (const id of ruleIds) expect(id).toMatch(/^[a-z0-9]+\/[a-z0-9-]+$/);
  });

  it("hold every rule that is checked", () => {
    expect(ruleIds).toEqual(expect.arrayContaining(rules.map((rule) => rule.id)));
  });
});
