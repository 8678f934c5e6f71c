import { type ExtensionContext, workspace } from "vscode";
import { Checker } from "./checker.ts";
import { registerCommands } from "./commands.ts";
import { offerWalkthrough } from "./first-run.ts";
import { StatusItem } from "./status-item.ts";

let checker: Checker | undefined;

/** Called by the editor when a firmware source or project is opened. */
export function activate(context: ExtensionContext): void {
  const status = new StatusItem();
  const started = new Checker(context, status);
  checker = started;
  context.subscriptions.push(
    status,
    ...registerCommands(context, started),
    workspace.onDidChangeConfiguration(async (event) => {
      if (event.affectsConfiguration("edgewise.enable")) await started.followSetting();
    }),
  );
  void offerWalkthrough(context);
  // The editor need not wait for the server; requests do.
  void started.followSetting();
}

/** Called by the editor before it ends. */
export async function deactivate(): Promise<void> {
  await checker?.stop();
}
