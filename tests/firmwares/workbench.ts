import type { Finding } from "../../src-core/finding.ts";
import type { CellChoice, MatrixPlan, RunInBrief } from "../../src-core/matrix-result.ts";
import { hostOfFiles } from "../../src-core/reader/source-host.ts";
import { createService } from "../../src-core/service/create-service.ts";
import type { Service } from "../../src-core/service/service.ts";
import { loadGrammar } from "../src-core/reader/syntax/load-grammar.ts";
import type { Style } from "./planted/planted-fault.ts";
import type { Files } from "./wrong-version.ts";

const grammar = await loadGrammar();

/** One run: a mouse, a PC and a stroke by their names. */
export interface Cell {
  readonly mouse: string;
  readonly pc: string;
  readonly stroke: string;
}

/** Checks and runs versions of a style, one after the other; what a version has in common with the one before is not read again. */
export class Workbench {
  #files: Files = {};
  readonly #service: Service;

  constructor(style: Style) {
    this.#service = createService({
      host: {
        readText: (path) => this.#files[path],
        listFolder: (path) => hostOfFiles(this.#files).listFolder(path),
      },
      grammar,
      startName: style,
    });
  }

  /** What the text of a version shows. */
  check(files: Files): readonly Finding[] {
    return this.#service.check(this.#projectOf(files)).findings;
  }

  /** What a run of a version shows. Throws where it cannot be run. */
  run(files: Files, { mouse, pc, stroke }: Cell): RunInBrief {
    const [run] = this.runAll(files, { mouse, pc, strokes: [stroke], seed: 1 });
    if (run === undefined) throw new Error("nothing was run");
    return run;
  }

  /** A run for each stroke. Throws where one cannot be made. */
  runAll(files: Files, choice: CellChoice): readonly RunInBrief[] {
    return this.#service.runCell(this.#projectOf(files), choice).outcomes.map((outcome) => {
      if (outcome.kind === "cannot") throw new Error(outcome.message);
      return outcome.run;
    });
  }

  /** The matrix that is run where nothing else is asked for. */
  plan(files: Files): MatrixPlan {
    const choice = { mice: undefined, pcs: undefined, strokes: undefined };
    const result = this.#service.planMatrix(this.#projectOf(files), choice);
    if (result.kind === "cannot") throw new Error(result.message);
    return result.plan;
  }

  #projectOf(files: Files): string {
    this.#files = files;
    const [project] = this.#service.projectsAt(".");
    if (project === undefined) throw new Error("there is no project");
    return project.id;
  }
}
