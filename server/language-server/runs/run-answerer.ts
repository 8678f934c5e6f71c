import { FileLines } from "../../../src-core/present/line-index.ts";
import { carriedBytes } from "../../../src-core/present/ribbon/carried-bytes.ts";
import { closeUpOf } from "../../../src-core/present/ribbon/close-up.ts";
import { panelOf, type RunRows, rowsOf } from "../../../src-core/present/ribbon/panel.ts";
import { ribbonOf, wordsOf } from "../../../src-core/present/ribbon/ribbon-of.ts";
import { ribbonAsSvg, svgCanvas } from "../../../src-core/present/svg/ribbon-as-svg.ts";
import { vcdText } from "../../../src-core/present/vcd.ts";
import type { SourceHost } from "../../../src-core/reader/source-host.ts";
import type { ProjectEntry, Service } from "../../../src-core/service/service.ts";
import type { SimulatedRun } from "../../../src-core/simulation-result.ts";
import { notRun } from "../../cells/cell-job.ts";
import type { Listings } from "../../files/handed-files.ts";
import { below, nameOf, seenFrom } from "../../files/paths.ts";
import { renameDetailed } from "../../rename-run.ts";
import type { ServiceMaker } from "../serve.ts";
import { HandedOverFiles } from "../trials/handed-over-files.ts";
import { sameTexts, type Texts } from "../trials/texts.ts";
import type { RunReply, RunRequest } from "./messages.ts";

/** Columns between two labels of the time axis. */
const perTick = 90;

interface Kept {
  /** The name of its folder. */
  readonly name: string;
  /** Its files are named as seen from that folder. */
  readonly run: SimulatedRun;
  readonly lines: FileLines;
  readonly rows: RunRows;
}

/** The worker's side: runs firmware, keeps the last run and lays out what of it is asked for. */
export class RunAnswerer {
  readonly #files: HandedOverFiles;
  readonly #service: Service;
  #read: { readonly project: string; readonly texts: Texts; readonly entry: ProjectEntry } | undefined;
  #kept: Kept | undefined;

  /** `disk` is undefined where all is handed over. */
  constructor(disk: SourceHost | undefined, makeService: ServiceMaker) {
    this.#files = new HandedOverFiles(disk);
    this.#service = makeService(this.#files);
  }

  /** Takes as long as the firmware does. Never throws. */
  answer(request: RunRequest): RunReply {
    try {
      switch (request.kind) {
        case "run":
          return this.#run(request);
        case "cell":
          return this.#cell(request);
        case "panel":
          return this.#panel(request);
        case "text":
          return this.#text(request);
      }
    } catch (error) {
      return { kind: "cannot", message: error instanceof Error ? error.message : String(error) };
    }
  }

  #run({ project, texts, listings, choice }: Extract<RunRequest, { kind: "run" }>): RunReply {
    const entry = this.#entry(project, texts, listings);
    if (entry === undefined) return { kind: "cannot", message: gone };
    const result = this.#service.simulate(project, choice);
    if (result.kind === "cannot") return result;
    const { root } = entry;
    const run = renameDetailed(result.run, (file) => seenFrom(root, file));
    const lines = new FileLines((file) => this.#files.readText(below(root, file)));
    const name = nameOf(root);
    this.#kept = { name, run, lines, rows: rowsOf(run, lines) };
    const closeUp = closeUpOf(run);
    return {
      kind: "run",
      root,
      overview: {
        ...wordsOf(name, run, lines),
        ended: run.ended,
        edges: run.details.edges.length,
        closeUp: closeUp && { title: closeUp.title, ...closeUp.window },
        bytes: carriedBytes(run.details),
      },
    };
  }

  #cell({ project, texts, listings, cell }: Extract<RunRequest, { kind: "cell" }>): RunReply {
    const isThere = this.#entry(project, texts, listings) !== undefined;
    return {
      kind: "cell",
      result: isThere ? this.#service.runCell(project, cell) : notRun({ project, cell }, gone),
    };
  }

  #panel({ from, to, columns }: Extract<RunRequest, { kind: "panel" }>): RunReply {
    if (this.#kept === undefined) return nothingKept;
    return { kind: "panel", panel: panelOf(this.#kept.rows, "", { from, to }, { columns, perTick }) };
  }

  #text({ format, window }: Extract<RunRequest, { kind: "text" }>): RunReply {
    if (this.#kept === undefined) return nothingKept;
    const { name, run, lines } = this.#kept;
    const text =
      format === "vcd"
        ? vcdText({ edges: run.details.edges, ended: run.ended })
        : ribbonAsSvg(ribbonOf(name, run, lines, svgCanvas, window));
    return { kind: "text", text };
  }

  /** Reads a project again only where its texts are others. */
  #entry(project: string, texts: Texts, listings: Listings | undefined): ProjectEntry | undefined {
    const known = this.#read;
    if (known?.project === project && sameTexts(known.texts, texts)) return known.entry;
    this.#files.replace(texts, listings);
    const entry = this.#service.projectsAt(project).find(({ id }) => id === project);
    this.#read = entry && { project, texts, entry };
    return entry;
  }
}

const gone = "its files are not there any more";
const nothingKept: RunReply = { kind: "cannot", message: "nothing was run yet" };
