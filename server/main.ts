import { version } from "../package.json";
import type { SourceHost } from "../src-core/reader/source-host.ts";
import { createService } from "../src-core/service/create-service.ts";
import { checkCommand } from "./command-line/check/check-command.ts";
import { lspCommand } from "./command-line/lsp-command.ts";
import { runCommandLine } from "./command-line/run-command-line.ts";
import { loadGrammar } from "./load-grammar.ts";
import { endWhenReaderLeaves, wantsColours } from "./terminal.ts";

/** The `edgewise` command. */

const commands = [
  checkCommand(async (host: SourceHost) =>
    createService({ host, grammar: await loadGrammar(), startName: "" }),
  ),
  lspCommand(async () => {
    // Loaded on demand: a check need not pay for the protocol's library.
    const { serveStdio } = await import("./language-server/serve-stdio.ts");
    const grammar = await loadGrammar();
    serveStdio(version, (host) => createService({ host, grammar, startName: "" }));
  }),
];

endWhenReaderLeaves(process.stdout);

process.exitCode = await runCommandLine(commands, version, process.argv.slice(2), {
  workingFolder: process.cwd(),
  colours: wantsColours(process.stdout, process.env),
  stdout: (text) => process.stdout.write(text),
  stderr: (text) => process.stderr.write(text),
});
