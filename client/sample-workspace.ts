import { commands, type ExtensionContext, FileSystemError, Uri, window, workspace } from "vscode";
import { freeName } from "./free-name.ts";

/** Name of the folder in the package, and of its copy where nothing else has it. */
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
  const copy = await copyInto(into, extensionUri);
  if (copy !== undefined) await commands.executeCommand("vscode.openFolder", copy);
}

/** Under a name of its own; undefined, and said to the user, where it could not be copied. */
async function copyInto(into: Uri, extension: Uri): Promise<Uri | undefined> {
  try {
    const copy = Uri.joinPath(into, await freeName(FOLDER, (name) => isThere(Uri.joinPath(into, name))));
    await copySample(extension, copy);
    return copy;
  } catch (error) {
    void window.showErrorMessage(`The sample could not be put into ${into.fsPath}: ${String(error)}`);
    return undefined;
  }
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
    await workspace.fs.stat(uri);
    return true;
  } catch (error) {
    if (error instanceof FileSystemError && error.code === "FileNotFound") return false;
    throw error;
  }
}
