import { workspace } from "vscode";

/** Schemes of addresses that sources may have: those of the disk and of the folders that are open. */
export function fileSchemes(): readonly string[] {
  const ofFolders = workspace.workspaceFolders?.map(({ uri }) => uri.scheme) ?? [];
  return [...new Set(["file", ...ofFolders])].sort();
}
