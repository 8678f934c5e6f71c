import type { ExtensionContext, LogOutputChannel } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";

/** What speaks to servers, as the place allows where the extension runs. It is large, and a bundle of its own. */
export interface ClientLibrary {
  /** A client for one server, which is not started yet; `ended` is called when it ended without being asked to. */
  makeClient(context: ExtensionContext, log: LogOutputChannel, ended: () => void): BaseLanguageClient;
  /** Whether a request failed because the server is gone. */
  isLost(error: unknown): boolean;
}

/** Loads it. The editor's start does not wait for that. */
export type LoadLibrary = () => Promise<ClientLibrary>;
