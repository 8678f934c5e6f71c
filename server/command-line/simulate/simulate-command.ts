import { simulationsAsJson } from "../../../src-core/present/json/simulation-as-json.ts";
import { FileLines } from "../../../src-core/present/line-index.ts";
import { ribbonOf } from "../../../src-core/present/ribbon/ribbon-of.ts";
import { type AskedWindow, windowOf } from "../../../src-core/present/ribbon/time-window.ts";
import { ribbonAsSvg, svgCanvas } from "../../../src-core/present/svg/ribbon-as-svg.ts";
import { coloured, plain } from "../../../src-core/present/text/paint.ts";
import { simulationAsText } from "../../../src-core/present/text/simulation-as-text.ts";
import { vcdText } from "../../../src-core/present/vcd.ts";
import type { SourceHost } from "../../../src-core/reader/source-host.ts";
import type { Service } from "../../../src-core/service/service.ts";
import { hasPassed, type SimulatedRun, type SimulationChoice } from "../../../src-core/simulation-result.ts";
import { DiskFiles } from "../../files/disk-files.ts";
import { renameDetailed } from "../../rename-run.ts";
import { CannotDo } from "../cannot-do.ts";
import type { Arguments, Command, Surroundings } from "../command.ts";
import { exitStatus } from "../exit-status.ts";
import { formatAmong } from "../format-among.ts";
import { projectsOf, seenFrom } from "../projects-at.ts";
import { seedOf } from "../seed-of.ts";
import { writeOutput } from "../write-output.ts";
import { askedWindow } from "./asked-window.ts";

const formats = ["text", "json", "svg", "vcd"] as const;

/** `edgewise simulate`. */
export function simulateCommand(makeService: (host: SourceHost) => Promise<Service>): Command {
  return {
    name: "simulate",
    operands: "[PATH...] [OPTION...]",
    summary: "Runs the whole firmware between a virtual mouse and a virtual PC.",
    options: [
      { name: "stroke", value: "NAME", help: "what the hand does with the mouse; circle unless given" },
      { name: "mouse", value: "NAME", help: "which mouse; the plain one unless given" },
      { name: "pc", value: "NAME", help: "which PC; one that toggles RTS unless given" },
      { name: "seed", value: "N", help: "where jitter and noise come from; 1 unless given" },
      { name: "format", value: formats.join("|"), help: "what the report looks like; text unless given" },
      {
        name: "from",
        value: "MS",
        help: "where the picture begins, in milliseconds; only with --format svg",
      },
      { name: "to", value: "MS", help: "where it ends; the whole run unless given" },
      { name: "output", value: "FILE", help: "write the report to FILE instead of the terminal" },
    ],
    details: [
      "Exit status: 0 when every run passes, 1 when one fails, 2 when it could not be done.",
      "A name that there is not is answered with those that there are.",
      "The picture (svg) shows the mouse's wires, the code and the PC's line over one time axis, with a thread from each",
      "report of the mouse to the one that carried it; what is too dense to show becomes visible with --from and --to.",
      "The sources are run by Edgewise itself, in virtual time; cycles are estimated. The same seed gives the same run.",
    ],
    async run(given, surroundings) {
      const format = formatAmong(formats, given.options.get("format") ?? "text");
      const wanted = { format, window: askedWindow(given.options, format) };
      const files = new DiskFiles(surroundings.workingFolder);
      const runs = simulate(await makeService(files), given, surroundings);
      writeOutput(
        report(runs, files, wanted, given, surroundings),
        given.options.get("output"),
        surroundings,
      );
      return runs.every(({ run }) => hasPassed(run)) ? exitStatus.clean : exitStatus.findings;
    },
  };
}

interface ProjectRun {
  readonly project: string;
  readonly run: SimulatedRun;
}

function simulate(
  service: Service,
  { operands, options }: Arguments,
  { workingFolder }: Surroundings,
): readonly ProjectRun[] {
  const choice: SimulationChoice = {
    stroke: options.get("stroke"),
    mouse: options.get("mouse"),
    pc: options.get("pc"),
    seed: seedOf(options.get("seed")),
  };
  const asSeenFromHere = seenFrom(workingFolder);
  const paths = operands.length === 0 ? ["."] : operands;
  return projectsOf(service, paths, workingFolder).map(({ id }) => {
    const project = asSeenFromHere(id);
    const result = service.simulate(id, choice);
    if (result.kind === "cannot") throw new CannotDo(`${project}: ${result.message}`);
    return { project, run: renameDetailed(result.run, asSeenFromHere) };
  });
}

function onlyOne(runs: readonly ProjectRun[], format: string): ProjectRun {
  const [only, more] = runs;
  if (only === undefined || more !== undefined)
    throw new CannotDo(`--format ${format} shows one firmware; name its folder`);
  return only;
}

interface Wanted {
  readonly format: (typeof formats)[number];
  readonly window: AskedWindow | undefined;
}

function report(
  runs: readonly ProjectRun[],
  files: DiskFiles,
  { format, window }: Wanted,
  { options }: Arguments,
  { colours }: Surroundings,
): string {
  const lines = new FileLines((file) => files.readText(file));
  switch (format) {
    case "text": {
      const paint = colours && options.get("output") === undefined ? coloured : plain;
      return runs.map(({ project, run }) => simulationAsText(project, run, lines, paint)).join("\n");
    }
    case "json":
      return simulationsAsJson(runs, lines);
    case "svg": {
      const { project, run } = onlyOne(runs, "svg");
      const part = window && windowOf(window, run.ended);
      if (part !== undefined && "nothing" in part) throw new CannotDo(part.nothing);
      return ribbonAsSvg(ribbonOf(project, run, lines, svgCanvas, part));
    }
    case "vcd": {
      const only = onlyOne(runs, "vcd");
      return vcdText({ edges: only.run.details.edges, ended: only.run.ended });
    }
  }
}
