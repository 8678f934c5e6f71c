import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { DiskFiles } from "../files/disk-files.ts";
import { type ServerParts, serve } from "./serve.ts";

/**
 * Serves the client on standard input and output. The process ends when the client says so or its end of the
 * pipe closes; nothing else may end it, so faults outside any request are told on standard error.
 */
export function serveStdio(parts: Omit<ServerParts, "disk">): void {
  const tell = (error: unknown) => {
    process.stderr.write(`${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
  };
  process.on("uncaughtException", tell);
  process.on("unhandledRejection", tell);
  const connection = createConnection(ProposedFeatures.all, process.stdin, process.stdout);
  serve(connection, { ...parts, disk: new DiskFiles("/") });
}
