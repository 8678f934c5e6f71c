import { expect, test } from "vitest";
import { findProjects } from "../../../src-core/project/find-projects.ts";
import { ProjectReader } from "../../../src-core/service/project-reading.ts";
import { vocabulary } from "../../../src-core/service/vocabulary.ts";
import { hostIgnoringCase } from "../reader/host-ignoring-case.ts";
import { loadGrammar } from "../reader/syntax/load-grammar.ts";

test("a header is changed by whatever spelling it is included", async () => {
  const host = hostIgnoringCase({ "p/main.c": '#include "Rate.h"\n', "p/rate.h": "int rate;\n" });
  const [project] = findProjects(host, "p", { vocabulary });
  if (project === undefined) throw new Error("no project found");
  const reading = new ProjectReader(host, await loadGrammar()).read(project);
  const span = { file: "p/rate.h", start: 4, end: 8 };
  const { files } = reading.edited([{ span, text: "pace" }]);
  expect([...files].map(([file, { text }]) => [file, text])).toEqual([
    ["p/main.c", '#include "Rate.h"\n'],
    ["p/rate.h", "int pace;\n"],
  ]);
});
