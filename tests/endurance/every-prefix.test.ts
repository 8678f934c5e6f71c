import { describe, expect, it } from "vitest";
import { createService } from "../../src-core/service/create-service.ts";
import { loadGrammar } from "../src-core/reader/syntax/load-grammar.ts";
import { ChangingHost } from "./changing-host.ts";
import { sampleProjects, sourcesOf } from "./sample-projects.ts";

const grammar = await loadGrammar();

describe("a file cut off anywhere is checked like any other", () => {
  for (const project of sampleProjects) {
    for (const [file, text] of sourcesOf(project)) {
      it(`${project.name}/${file}, ${text.length} prefixes`, () => {
        const host = new ChangingHost(project.files);
        const service = createService({ host, grammar, startName: project.name });
        const [entry] = service.projectsAt(".");
        if (entry === undefined) throw new Error("no project found");
        const whole = service.check(entry.id);
        for (let end = 0; end < text.length; end++) {
          host.write(file, text.slice(0, end));
          for (const { span } of service.check(entry.id).findings) {
            if (span.file === file) expect(span.end).toBeLessThanOrEqual(end);
          }
        }
        host.write(file, text);
        expect(service.check(entry.id)).toEqual(whole);
      });
    }
  }
});
