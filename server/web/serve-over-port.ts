import { BrowserMessageReader, BrowserMessageWriter, createConnection } from "vscode-languageserver/browser";
import type { WorkerFiles } from "../language-server/client-messages/web-worker.ts";
import type { RunReply, RunRequest } from "../language-server/runs/messages.ts";
import { type ServerParts, serve } from "../language-server/serve.ts";
import type { TrialAnswer, TrialRequest } from "../language-server/trials/messages.ts";
import { PackageFiles } from "../package-files.ts";
import { webWorkersOf } from "../workers/web/start-worker.ts";
import type { StarterOf } from "../workers/worker.ts";

/** Serves the client at the other end of `port`; all files are the client's. */
export function serveOverPort(
  port: MessagePort,
  { program, runtimeWasm, grammarWasm, extension }: WorkerFiles & { readonly extension: string },
  parts: Pick<ServerParts, "version" | "makeService">,
): void {
  const workers = <Request, Answer>(role: "trials" | "runs"): StarterOf<Request, Answer> =>
    webWorkersOf(() => new Worker(program, { name: `edgewise ${role}` }), {
      role,
      program,
      runtimeWasm,
      grammarWasm,
    });
  const connection = createConnection(new BrowserMessageReader(port), new BrowserMessageWriter(port));
  serve(connection, {
    ...parts,
    disk: undefined,
    startWorker: workers<TrialRequest, TrialAnswer>("trials"),
    startRunWorker: workers<RunRequest, RunReply>("runs"),
    // One core is left to the editor.
    matrixWorkers: Math.max(1, navigator.hardwareConcurrency - 1),
    packageFiles: new PackageFiles(new URL(extension)),
  });
}
