import { availableParallelism } from "node:os";
import { workerData } from "node:worker_threads";
import { version } from "../package.json";
import { createService } from "../src-core/service/create-service.ts";
import { checkCommand } from "./command-line/check/check-command.ts";
import { explainCommand } from "./command-line/explain/explain-command.ts";
import { lspCommand } from "./command-line/lsp-command.ts";
import { matrixCommand } from "./command-line/matrix/matrix-command.ts";
import { cellRole } from "./command-line/matrix/node/cell-role.ts";
import { notesCommand } from "./command-line/notes/notes-command.ts";
import { runCommandLine } from "./command-line/run-command-line.ts";
import { simulateCommand } from "./command-line/simulate/simulate-command.ts";
import { runRole } from "./language-server/runs/node/run-role.ts";
import type { ServiceMaker } from "./language-server/serve.ts";
import { trialRole } from "./language-server/trials/node/trial-role.ts";
import { loadGrammar } from "./load-grammar.ts";
import { PackageFiles } from "./package-files.ts";
import { endWhenReaderLeaves, wantsColours } from "./terminal.ts";
import { workersOf } from "./workers/node/start-worker.ts";
import { keepResultsYoung } from "./young-results.ts";

/** The `edgewise` command, and the workers that it starts from the same file. */

if (workerData === trialRole) {
  const { answerInWorker } = await import("./language-server/trials/node/answer-in-worker.ts");
  answerInWorker(await serviceMaker());
} else if (workerData === cellRole) {
  const { answerCells } = await import("./command-line/matrix/node/answer-cells.ts");
  answerCells(await serviceMaker());
} else if (workerData === runRole) {
  const { answerRuns } = await import("./language-server/runs/node/answer-runs.ts");
  answerRuns(await serviceMaker());
} else {
  await runCommand();
}

async function runCommand(): Promise<void> {
  const packageFiles = new PackageFiles(new URL("../", import.meta.url));
  const commands = [
    checkCommand(async (host) => (await serviceMaker())(host), { version, packageFiles }),
    simulateCommand(async (host) => (await serviceMaker())(host)),
    matrixCommand(async (host) => (await serviceMaker())(host), {
      start: workersOf({ program: new URL(import.meta.url), role: cellRole, keepsProcess: true }),
      usual: availableParallelism(),
    }),
    explainCommand,
    notesCommand(async (host) => (await serviceMaker())(host)),
    lspCommand(async () => {
      // Loaded on demand: a check need not pay for the protocol's library.
      const { serveStdio } = await import("./language-server/serve-stdio.ts");
      const { workersRunning } = await import("./language-server/trials/node/start-worker.ts");
      const startWorker = workersRunning(new URL(import.meta.url));
      keepResultsYoung();
      serveStdio({
        version,
        makeService: await serviceMaker(),
        startWorker,
        startRunWorker: workersOf({ program: new URL(import.meta.url), role: runRole, keepsProcess: false }),
        // One core is left to the editor.
        matrixWorkers: Math.max(1, availableParallelism() - 1),
        packageFiles,
      });
    }),
  ];
  endWhenReaderLeaves(process.stdout);
  process.exitCode = await runCommandLine(commands, version, process.argv.slice(2), {
    workingFolder: process.cwd(),
    colours: wantsColours(process.stdout, process.env),
    stdout: (text) => process.stdout.write(text),
    stderr: (text) => process.stderr.write(text),
    showsProgress: process.stderr.isTTY === true && process.env.TERM !== "dumb",
    onInterrupt: (listener) => {
      process.on("SIGINT", listener);
      return () => process.off("SIGINT", listener);
    },
  });
}

async function serviceMaker(): Promise<ServiceMaker> {
  const grammar = await loadGrammar();
  return (host) => createService({ host, grammar, startName: "" });
}
