import { type ExtensionContext, workspace } from "vscode";
import { Checker } from "./checker.ts";
import type { LoadLibrary } from "./client-library.ts";
import { registerCommands } from "./commands.ts";
import { offerWalkthrough } from "./first-run.ts";
import { StatusItem } from "./status-item.ts";

/** What the editor is handed when it loads the extension. */
export interface Extension {
  /** Called by the editor when a firmware source or project is opened. */
  activate(context: ExtensionContext): void;
  /** Called by the editor before it ends. */
  deactivate(): Promise<void>;
}

/** The extension, wherever it runs; `library` speaks to servers as that place allows. */
export function extensionWith(library: LoadLibrary): Extension {
  let checker: Checker | undefined;
  return {
    activate(context) {
      const status = new StatusItem();
      const started = new Checker(context, status, library);
      checker = started;
      context.subscriptions.push(
        status,
        ...registerCommands(context, started),
        workspace.onDidChangeConfiguration(async (event) => {
          if (event.affectsConfiguration("edgewise.enable")) await started.followSetting();
        }),
        workspace.onDidChangeWorkspaceFolders(() => started.followFolders()),
        started.onChecked(({ projects }) => {
          if (projects > 0) void offerWalkthrough(context);
        }),
      );
      // The editor need not wait for the server; requests do.
      void started.followSetting();
    },
    async deactivate() {
      await checker?.stop();
    },
  };
}
