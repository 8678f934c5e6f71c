import { FileType, Uri, window, workspace } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import {
  type FolderContents,
  type HandedFile,
  type ReadFilesParams,
  type ReadFolderParams,
  readFilesRequest,
  readFolderRequest,
} from "../../server/language-server/client-messages/files.ts";
import { type Files, readFiles, readFolder } from "./read-folder.ts";

/** Reads files for the server that it cannot read itself: those of a browser and of virtual workspaces. */
export function handOverFiles(client: BaseLanguageClient): void {
  client.onRequest(readFolderRequest, async (params: ReadFolderParams): Promise<FolderContents> => {
    const contents = await readFolder(editorFiles, Uri.parse(params.folder), params);
    const [first] = contents.leftOut;
    if (first !== undefined) void window.showWarningMessage(`Edgewise does not read everything: ${first}.`);
    return contents;
  });
  client.onRequest(readFilesRequest, (params: ReadFilesParams): Promise<readonly HandedFile[]> => {
    const addresses = params.files.map((uri) => Uri.parse(uri));
    return readFiles(editorFiles, addresses, params);
  });
}

/** The files of any provider that the editor has. */
const editorFiles: Files<Uri> = {
  list: async (folder) =>
    (await workspace.fs.readDirectory(folder)).map(([name, type]) => ({
      name,
      isFolder: (type & FileType.Directory) !== 0,
    })),
  size: async (file) => (await workspace.fs.stat(file)).size,
  read: async (file) => workspace.fs.readFile(file),
  child: (folder, name) => Uri.joinPath(folder, name),
  uriOf: (address) => address.toString(),
};
