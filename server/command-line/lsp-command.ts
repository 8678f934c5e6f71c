import { CannotDo } from "./cannot-do.ts";
import type { Command } from "./command.ts";
import { exitStatus } from "./exit-status.ts";

/** `edgewise lsp --stdio`. `serveStdio` returns once the client is listened to. */
export function lspCommand(serveStdio: () => Promise<void>): Command {
  return {
    name: "lsp",
    operands: "--stdio",
    summary: "Serves an editor through the Language Server Protocol.",
    options: [
      { name: "stdio", value: undefined, help: "speak over standard input and output; required" },
      { name: "clientProcessId", value: "PID", help: "end when this process has ended" },
    ],
    details: [],
    async run({ operands, options }) {
      if (!options.has("stdio"))
        throw new CannotDo(`the language server needs --stdio: "edgewise lsp --stdio"`);
      const [operand] = operands;
      if (operand !== undefined)
        throw new CannotDo(`lsp takes no "${operand}"; the editor names the folders`);
      await serveStdio();
      return exitStatus.clean;
    },
  };
}
