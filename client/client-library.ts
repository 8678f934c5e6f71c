import type { ExtensionContext, LogOutputChannel } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";

/** What a client works with. */
export interface ClientSurroundings {
  /** Those of the documents that the server hears of. */
  readonly schemes: readonly string[];
  readonly log: LogOutputChannel;
  /** Called when the server ended without being asked to. */
  readonly ended: () => void;
}

/** What speaks to servers, as the place allows where the extension runs. It is large, and a bundle of its own. */
export interface ClientLibrary {
  /** A client for one server, which is not started yet. */
  makeClient(context: ExtensionContext, surroundings: ClientSurroundings): BaseLanguageClient;
  /** Whether a request failed because the server is gone. */
  isLost(error: unknown): boolean;
}

/** Loads it. The editor's start does not wait for that. */
export type LoadLibrary = () => Promise<ClientLibrary>;
