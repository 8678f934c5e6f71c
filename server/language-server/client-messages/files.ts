/**
 * Files that the server cannot read itself, such as those of a browser or of a virtual workspace: the client reads
 * them for a server that asks. A client whose `initializationOptions` hold `"files": true` answers these requests.
 */

/**
 * Request of the server: the files below a folder. Its parameters are a `ReadFolderParams`, its answer a `FolderContents`, or an
 * error where the folder cannot be listed: it is then asked for again later.
 */
export const readFolderRequest = "edgewise/readFolder";

/** Request of the server: files that came or changed. Its parameters are a `ReadFilesParams`, its answer a `HandedFile[]`. */
export const readFilesRequest = "edgewise/readFiles";

/** Which files are wanted, and how much at most. */
export interface ReadFolderParams {
  /** URI of the folder. */
  readonly folder: string;
  /** In lower case, without the dot. */
  readonly extensions: readonly string[];
  /** Whole names in lower case, wanted whatever their extension. */
  readonly names: readonly string[];
  /** Names in lower case of folders that are not entered; hidden ones are not, either. */
  readonly leftOutFolders: readonly string[];
  readonly limits: FileLimits;
}

export interface FileLimits {
  /** Folders that are listed. */
  readonly folders: number;
  /** Folders within one another. */
  readonly depth: number;
  readonly files: number;
  /** Bytes of all files together. */
  readonly bytes: number;
  /** Bytes of a file; larger ones are left out. */
  readonly bytesOfFile: number;
}

export interface ReadFilesParams {
  /** URIs. */
  readonly files: readonly string[];
  readonly bytesOfFile: number;
}

export interface FolderContents {
  readonly files: readonly HandedFile[];
  /** What was left out because of the limits, as a sentence each. */
  readonly leftOut: readonly string[];
}

export interface HandedFile {
  readonly uri: string;
  /** Its bytes in base 64; undefined for a file that is gone, too large or cannot be read. */
  readonly base64: string | undefined;
}
