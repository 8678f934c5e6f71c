import { commands, type ExtensionContext, window } from "vscode";

const SEEN = "edgewise.walkthroughOffered";
/** `publisher.name#id`, as the manifest has them. */
const WALKTHROUGH = "edgewise.edgewise#firstHour";

/** Points to the walkthrough once, the first time that a firmware was checked for this user. */
export async function offerWalkthrough({ globalState }: ExtensionContext): Promise<void> {
  if (globalState.get<boolean>(SEEN) === true) return;
  await globalState.update(SEEN, true);
  const show = "Show Me Around";
  const answer = await window.showInformationMessage("Edgewise checks this firmware now.", show);
  if (answer === show) await openWalkthrough();
}

export async function openWalkthrough(): Promise<void> {
  await commands.executeCommand("workbench.action.openWalkthrough", WALKTHROUGH, false);
}
