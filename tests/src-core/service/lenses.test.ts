import { expect, test } from "vitest";
import { lensTitle } from "../../../src-core/present/lenses/lens-title.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { createService } from "../../../src-core/service/create-service.ts";
import { loadGrammar } from "../reader/syntax/load-grammar.ts";
import { sampleFiles } from "./sample-run.ts";

const grammar = await loadGrammar();

test("a lens says why its trial failed, where it has nothing else to show, until the next edit", () => {
  const files = { ...sampleFiles("ferry-c") };
  const host = {
    readText: (path: string) => files[path],
    listFolder: (path: string) => hostOfFiles(files).listFolder(path),
  };
  const service = createService({ host, grammar, startName: "adapter" });
  const project = service.projectsAt(".")[0]?.id ?? "";
  const titles = () => ["ps2.c", "main.c"].map((file) => service.lenses(project, file).map(lensTitle));
  const tried = service.tryOut(project);
  if (tried === undefined) throw new Error("not tried");
  const why = "it ended";

  service.takeOver(project, { ...tried, failure: { why, partsRan: true } });
  expect(titles()).toEqual([
    [expect.stringContaining("as ps2-standard wants")],
    ["the whole firmware: not run: it ended"],
  ]);
  service.takeOver(project, { ...tried, reports: [], failure: { why, partsRan: false } });
  expect(titles()).toEqual([
    ["ps2-standard: not tried: it ended"],
    ["the whole firmware: not run: it ended"],
  ]);
  files["main.c"] = `${files["main.c"]}\n`;
  expect(titles()).toEqual([["ps2-standard: not tried yet"], ["the whole firmware: not run yet"]]);
});
