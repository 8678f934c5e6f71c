import { commands, type ExtensionContext, FileType, Uri, window, workspace } from "vscode";

/** Name of the folder in the package, and of its copy. */
const FOLDER = "sample-workspace";

/** Copies the sample workspace to a folder that the user picks, and opens it; nothing that is there is written over. */
export async function openSampleWorkspace({ extensionUri }: ExtensionContext): Promise<void> {
  const picked = await window.showOpenDialog({
    canSelectFolders: true,
    canSelectFiles: false,
    openLabel: "Put the Sample Here",
    title: "A folder to put a copy of the sample workspace into",
  });
  const [into] = picked ?? [];
  if (into === undefined) return;
  const copy = Uri.joinPath(into, FOLDER);
  if (!(await isThere(copy))) await workspace.fs.copy(Uri.joinPath(extensionUri, FOLDER), copy);
  await commands.executeCommand("vscode.openFolder", copy);
}

async function isThere(uri: Uri): Promise<boolean> {
  try {
    return (await workspace.fs.stat(uri)).type === FileType.Directory;
  } catch {
    return false;
  }
}
