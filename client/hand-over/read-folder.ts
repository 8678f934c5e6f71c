import type {
  FolderContents,
  HandedFile,
  ReadFilesParams,
  ReadFolderParams,
} from "../../server/language-server/client-messages/files.ts";
import { asBase64 } from "./base64.ts";

/** What of the editor's file system is needed; all of it rejects where there is nothing of that kind. */
export interface Files<Address> {
  /** Names in a folder. */
  list(folder: Address): Promise<readonly { readonly name: string; readonly isFolder: boolean }[]>;
  /** Size in bytes. */
  size(file: Address): Promise<number>;
  read(file: Address): Promise<Uint8Array>;
  child(folder: Address, name: string): Address;
  uriOf(address: Address): string;
}

/** How many files or folders are asked for at a time: they may be far away. */
const together = 16;

/**
 * Reads what is wanted of a folder, nearest files first, until a limit is met; what is left out is said. Rejects where the
 * folder itself cannot be listed.
 */
export async function readFolder<Address>(
  files: Files<Address>,
  folder: Address,
  params: Omit<ReadFolderParams, "folder">,
): Promise<FolderContents> {
  const where = files.uriOf(folder);
  const listed = await listFolder(files, folder, params);
  const leftOut = [...listed.leftOut];
  const { limits } = params;
  const wanted = listed.files.slice(0, limits.files);
  if (wanted.length < listed.files.length) {
    leftOut.push(`${where} has more than ${limits.files} sources; the deepest are not read`);
  }
  const handed: HandedFile[] = [];
  let bytes = 0;
  for (const some of inGroups(wanted, together)) {
    const read = await Promise.all(some.map((file) => readFile(files, file, limits.bytesOfFile)));
    for (const [index, each] of read.entries()) {
      const file = some[index];
      if (each === undefined || file === undefined) continue;
      if (each === "large") {
        leftOut.push(`${files.uriOf(file)} is larger than ${limits.bytesOfFile} bytes and is not read`);
        continue;
      }
      bytes += each.length;
      if (bytes > limits.bytes) {
        leftOut.push(
          `the sources of ${where} have more than ${limits.bytes} bytes; the deepest are not read`,
        );
        return { files: handed, leftOut };
      }
      handed.push({ uri: files.uriOf(file), base64: asBase64(each) });
    }
  }
  return { files: handed, leftOut };
}

/** Reads single files. */
export function readFiles<Address>(
  files: Files<Address>,
  addresses: readonly Address[],
  { bytesOfFile }: Pick<ReadFilesParams, "bytesOfFile">,
): Promise<HandedFile[]> {
  return Promise.all(
    addresses.map(async (file): Promise<HandedFile> => {
      const read = await readFile(files, file, bytesOfFile);
      const isThere = read !== undefined && read !== "large";
      return { uri: files.uriOf(file), base64: isThere ? asBase64(read) : undefined };
    }),
  );
}

interface Listed<Address> {
  /** Those of the folder itself first, then those one folder deeper, and so on. */
  readonly files: readonly Address[];
  readonly leftOut: readonly string[];
}

async function listFolder<Address>(
  files: Files<Address>,
  start: Address,
  { extensions, names, leftOutFolders, limits }: Omit<ReadFolderParams, "folder">,
): Promise<Listed<Address>> {
  const isWanted = (name: string): boolean => {
    const lower = name.toLowerCase();
    const dot = lower.lastIndexOf(".");
    return names.includes(lower) || (dot > 0 && extensions.includes(lower.slice(dot + 1)));
  };
  const isEntered = (name: string): boolean =>
    !name.startsWith(".") && !leftOutFolders.includes(name.toLowerCase());
  const found: Address[] = [];
  const leftOut: string[] = [];
  let asked = 0;
  let level: readonly Address[] = [start];
  for (let depth = 0; level.length > 0; depth++) {
    const inReach = depth > limits.depth ? [] : level.slice(0, limits.folders - asked);
    asked += inReach.length;
    const deeper: Address[] = [];
    for (const some of inGroups(inReach, together)) {
      const listings = await Promise.all(
        some.map((folder) =>
          files.list(folder).catch((error: unknown) => {
            const said = `${files.uriOf(folder)} cannot be listed: ${reasonOf(error)}`;
            if (folder === start) throw new Error(said);
            leftOut.push(said);
            return [];
          }),
        ),
      );
      for (const [index, entries] of listings.entries()) {
        const folder = some[index];
        if (folder === undefined) continue;
        for (const { name, isFolder } of entries) {
          if (isFolder && isEntered(name)) deeper.push(files.child(folder, name));
          else if (!isFolder && isWanted(name)) found.push(files.child(folder, name));
        }
      }
    }
    if (inReach.length < level.length) {
      const where = files.uriOf(start);
      leftOut.push(
        `${where} has more than ${limits.folders} folders, or more than ${limits.depth} within one another; the deepest are not read`,
      );
      break;
    }
    level = deeper;
  }
  return { files: found, leftOut };
}

async function readFile<Address>(
  files: Files<Address>,
  file: Address,
  most: number,
): Promise<Uint8Array | "large" | undefined> {
  try {
    return (await files.size(file)) > most ? "large" : await files.read(file);
  } catch {
    return undefined;
  }
}

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

function* inGroups<Item>(items: readonly Item[], size: number): Generator<readonly Item[]> {
  for (let start = 0; start < items.length; start += size) yield items.slice(start, start + size);
}
