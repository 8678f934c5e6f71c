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
  try {
    if (!(await isThere(copy))) await copySample(extensionUri, copy);
  } catch (error) {
    void window.showErrorMessage(`The sample could not be put into ${into.path}: ${String(error)}`);
    return;
  }
  await commands.executeCommand("vscode.openFolder", copy);
}

/** File by file: an extension that a browser fetched from a web server has files and no folders. */
async function copySample(extension: Uri, copy: Uri): Promise<void> {
  const listed = await workspace.fs.readFile(Uri.joinPath(extension, "dist", "sample-files.json"));
  const files: readonly string[] = JSON.parse(new TextDecoder().decode(listed));
  await Promise.all(
    files.map(async (file) => {
      const bytes = await workspace.fs.readFile(Uri.joinPath(extension, FOLDER, file));
      await workspace.fs.writeFile(Uri.joinPath(copy, file), bytes);
    }),
  );
}

async function isThere(uri: Uri): Promise<boolean> {
  try {
    return (await workspace.fs.stat(uri)).type === FileType.Directory;
  } catch {
    return false;
  }
}
