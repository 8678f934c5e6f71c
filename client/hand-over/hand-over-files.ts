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
import type { ToldOnce } from "./told-once.ts";

/** Reads files for the server that it cannot read itself: those of a browser and of virtual workspaces. */
export function handOverFiles(client: BaseLanguageClient, told: ToldOnce): void {
  const warn = (leftOut: readonly string[]) => {
    const news = told.firstNews(leftOut);
    if (news !== undefined) void window.showWarningMessage(`Edgewise does not read everything: ${news}.`);
  };
  client.onRequest(readFolderRequest, async (params: ReadFolderParams): Promise<FolderContents> => {
    try {
      const contents = await readFolder(editorFiles, Uri.parse(params.folder), params);
      warn(contents.leftOut);
      return contents;
    } catch (error) {
      if (error instanceof Error) warn([error.message]);
      throw error;
    }
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
