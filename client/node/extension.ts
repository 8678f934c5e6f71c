import { extensionWith } from "../activation.ts";

/** The extension on a desktop or a remote machine: the server is a process of its own. */
export const { activate, deactivate } = extensionWith(async (context, options) => {
  const { LanguageClient, TransportKind } = await import("vscode-languageclient/node");
  const module = context.asAbsolutePath("dist/edgewise.js");
  const server = { module, args: ["lsp"], transport: TransportKind.stdio };
  return new LanguageClient("edgewise", "Edgewise", server, options);
});
