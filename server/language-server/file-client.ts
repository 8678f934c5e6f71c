import { type Connection, type InitializeParams, RequestType } from "vscode-languageserver";
import {
  type FolderContents,
  type HandedFile,
  type ReadFilesParams,
  type ReadFolderParams,
  readFilesRequest,
  readFolderRequest,
} from "./client-messages/files.ts";
import type { FileClient } from "./handed-folders.ts";
import { handsFiles } from "./settings.ts";

const readFolder = new RequestType<ReadFolderParams, FolderContents, void>(readFolderRequest);
const readFiles = new RequestType<ReadFilesParams, readonly HandedFile[], void>(readFilesRequest);

/** The client as one that reads files; folders of a client that reads none look empty. */
export function fileClientOf(
  connection: Connection,
  { initializationOptions }: InitializeParams,
): FileClient {
  if (!handsFiles(initializationOptions)) {
    return { readFolder: async () => ({ files: [], leftOut: [] }), readFiles: async () => [] };
  }
  return {
    readFolder: (params) => connection.sendRequest(readFolder, params),
    readFiles: (params) => connection.sendRequest(readFiles, params),
  };
}
