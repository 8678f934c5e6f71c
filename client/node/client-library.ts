import { LanguageClient, TransportKind } from "vscode-languageclient/node";
import type { ClientLibrary } from "../client-library.ts";
import { clientOptions, quieted } from "../client-options.ts";
import { serverOptions } from "./server-options.ts";

/** The server is a process of its own. */
export const makeClient: ClientLibrary["makeClient"] = (context, surroundings) => {
  const module = context.asAbsolutePath("dist/edgewise.js");
  const options = { execArgv: [...serverOptions] };
  const server = { module, args: ["lsp"], transport: TransportKind.stdio, options };
  return quieted(new LanguageClient("edgewise", "Edgewise", server, clientOptions(surroundings)));
};

export { isLost } from "../client-options.ts";
