import type { LogOutputChannel } from "vscode";
import {
  CloseAction,
  ConnectionError,
  ErrorAction,
  ErrorCodes,
  LanguageClient,
  ResponseError,
  TransportKind,
} from "vscode-languageclient/node";

/** The editor's end of one server process; `ended` is called when that ended without being asked to. */
export function newClient(serverFile: string, log: LogOutputChannel, ended: () => void): LanguageClient {
  return new QuietClient(
    "edgewise",
    "Edgewise",
    { module: serverFile, args: ["lsp"], transport: TransportKind.stdio },
    {
      documentSelector: [
        { scheme: "file", language: "c" },
        { scheme: "file", language: "cpp" },
        { scheme: "file", pattern: "**/*.ino" },
        { scheme: "file", pattern: "**/edgewise.json" },
      ],
      initializationOptions: { status: true, lensCommands: true },
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
    },
  );
}

/** What goes wrong is logged; what the user should know of it, the checker says, once. */
class QuietClient extends LanguageClient {
  override error(message: string, data?: unknown): void {
    super.error(message, data, false);
  }

  override warn(message: string, data?: unknown): void {
    super.warn(message, data, false);
  }

  override info(message: string, data?: unknown): void {
    super.info(message, data, false);
  }
}

/** Whether a request failed because the server is gone. */
export function isLost(error: unknown): boolean {
  if (error instanceof ConnectionError) return true;
  return (
    error instanceof ResponseError &&
    (error.code === ErrorCodes.PendingResponseRejected || error.code === ErrorCodes.ConnectionInactive)
  );
}
