import {
  type BaseLanguageClient,
  CloseAction,
  ConnectionError,
  ErrorAction,
  ErrorCodes,
  type LanguageClientOptions,
  ResponseError,
} from "vscode-languageclient";
import type { ClientSurroundings } from "./client-library.ts";

/** For one server. */
export function clientOptions({ schemes, log, ended }: ClientSurroundings): LanguageClientOptions {
  return {
    documentSelector: schemes.flatMap((scheme) => [
      { scheme, language: "c" },
      { scheme, language: "cpp" },
      { scheme, pattern: "**/*.ino" },
      { scheme, pattern: "**/edgewise.json" },
    ]),
    initializationOptions: { status: true, lensCommands: true, files: true },
    initializationFailedHandler: () => false,
    synchronize: { configurationSection: "edgewise" },
    outputChannel: log,
    errorHandler: {
      // Where the server is gone, the connection closes as well.
      error: () => ({ action: ErrorAction.Continue, handled: true }),
      closed: () => {
        // Behind this call the client is done with its server.
        setTimeout(ended);
        return { action: CloseAction.DoNotRestart, handled: true, message: "The checker is gone." };
      },
    },
  };
}

/** What goes wrong in the client is logged; what the user should know of it, the checker says, once. */
export function quieted(client: BaseLanguageClient): BaseLanguageClient {
  for (const level of ["error", "warn", "info"] as const) {
    const say = client[level].bind(client);
    client[level] = (message: string, data?: unknown) => say(message, data, false);
  }
  return client;
}

/** Whether a request failed because the server is gone. */
export function isLost(error: unknown): boolean {
  if (error instanceof ConnectionError) return true;
  return (
    error instanceof ResponseError &&
    (error.code === ErrorCodes.PendingResponseRejected || error.code === ErrorCodes.ConnectionInactive)
  );
}
