import { expect, it } from "vitest";
import { chip } from "../../src-core/model/chips.ts";
import { findProjects } from "../../src-core/project/find-projects.ts";
import { ProgramCache } from "../../src-core/reader/program/program-cache.ts";
import { readProgram } from "../../src-core/reader/program/read-program.ts";
import { createService } from "../../src-core/service/create-service.ts";
import { vocabulary } from "../../src-core/service/vocabulary.ts";
import { loadGrammar } from "../src-core/reader/syntax/load-grammar.ts";
import { ChangingHost } from "./changing-host.ts";
import { type SampleProject, sourcesOf } from "./sample-projects.ts";

const grammar = await loadGrammar();

/** Every prefix is read; of so many, one is checked as well, which takes longer. */
const checkedOf = 29;

/** One test for each source of the sample: it is cut off after every character. */
export function readEveryPrefix(sample: SampleProject): void {
  for (const [file, text] of sourcesOf(sample)) {
    it(`${sample.name}/${file}, ${text.length} prefixes`, () => {
      const host = new ChangingHost(sample.files);
      const service = createService({ host, grammar, startName: sample.name });
      const [entry] = service.projectsAt(".");
      const [project] = findProjects(host, ".", { vocabulary, startName: sample.name });
      if (entry === undefined || project === undefined) throw new Error("no project found");
      const whole = service.check(entry.id);
      const request = {
        ...project,
        host,
        grammar,
        chip: chip("atmega328p"),
        clockHz: 16e6,
        cache: new ProgramCache(),
      };
      for (let end = 0; end < text.length; end++) {
        host.write(file, text.slice(0, end));
        expect(readProgram(request).units).toHaveLength(project.units.length);
        if (end % checkedOf !== 0) continue;
        for (const { span } of service.check(entry.id).findings) {
          if (span.file === file) expect(span.end).toBeLessThanOrEqual(end);
        }
      }
      host.write(file, text);
      expect(service.check(entry.id)).toEqual(whole);
    });
  }
}
