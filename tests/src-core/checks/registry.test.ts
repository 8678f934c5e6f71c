import { describe, expect, test } from "vitest";
import { ruleOf, rules } from "../../../src-core/checks/registry.ts";
import type { Draft, Rule } from "../../../src-core/checks/rule.ts";
import { runRules } from "../../../src-core/checks/run-rules.ts";
import type { RuleLevel } from "../../../src-core/finding.ts";
import { factsOf } from "./harness.ts";

const facts = factsOf({ "main.c": "int main(void) { return 0; }\n" });

const draft = (file: string, start: number): Draft => ({
  span: { file, start, end: start + 1 },
  message: "something is wrong",
  related: [],
  fixes: [],
});

const ruleGiving = (id: string, drafts: readonly Draft[]): Rule => ({
  id,
  title: "for this test",
  severity: "warning",
  why: "",
  wrong: {},
  right: {},
  source: "",
  check: () => drafts,
});

const run = (among: readonly Rule[], levels: Readonly<Record<string, RuleLevel>> = {}) =>
  runRules(facts, new Map(Object.entries(levels)), among);

describe("the list of rules", () => {
  test("names every rule once, as group and name", () => {
    const ids = rules.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^(board|serial|ps2|report|note)\/[a-z0-9-]+$/);
  });

  test("says of every rule what it is, why it matters and where it comes from", () => {
    for (const { id, title, why, source } of rules) {
      expect({ id, filled: title !== "" && why.length > 40 && source !== "" }).toEqual({ id, filled: true });
    }
  });

  test("finds a rule by its id", () => {
    expect(ruleOf("serial/baud-error")?.id).toBe("serial/baud-error");
    expect(ruleOf("serial/no-such-rule")).toBeUndefined();
  });
});

describe("a run", () => {
  test("orders findings by file, place and rule", () => {
    const late = ruleGiving("board/b", [draft("b.c", 1), draft("a.c", 9)]);
    const early = ruleGiving("board/a", [draft("a.c", 9), draft("a.c", 2)]);
    const order = run([late, early]).findings.map(({ rule, span }) => [span.file, span.start, rule]);
    expect(order).toEqual([
      ["a.c", 2, "board/a"],
      ["a.c", 9, "board/a"],
      ["a.c", 9, "board/b"],
      ["b.c", 1, "board/b"],
    ]);
  });

  test("gives the same finding once", () => {
    expect(run([ruleGiving("board/a", [draft("a.c", 1), draft("a.c", 1)])]).findings).toHaveLength(1);
  });

  test("takes the rule's own level unless the project has another", () => {
    const rule = ruleGiving("board/a", [draft("a.c", 1)]);
    expect(run([rule]).findings[0]?.severity).toBe("warning");
    expect(run([rule], { "board/a": "error" }).findings[0]?.severity).toBe("error");
    expect(run([rule], { "board/b": "error" }).findings[0]?.severity).toBe("warning");
  });

  test("leaves out a rule that is off", () => {
    expect(run([ruleGiving("board/a", [draft("a.c", 1)])], { "board/a": "off" }).findings).toEqual([]);
  });

  test("goes on after a rule that fails, and says which", () => {
    const failing: Rule = {
      ...ruleGiving("board/a", []),
      check() {
        throw new Error("no such pin");
      },
    };
    const { findings, notUnderstood } = run([failing, ruleGiving("board/b", [draft("a.c", 1)])]);
    expect(findings.map(({ rule }) => rule)).toEqual(["board/b"]);
    expect(notUnderstood.map(({ message }) => message)).toEqual([
      "board/a could not be checked: no such pin",
    ]);
  });
});
