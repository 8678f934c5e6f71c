import { fileURLToPath, pathToFileURL } from "node:url";

/** The core's path of a `file:` URI: absolute, with `/`. Undefined for any other URI or a malformed one. */
export function pathOfUri(uri: string): string | undefined {
  try {
    const url = new URL(uri);
    if (url.protocol !== "file:") return undefined;
    return fileURLToPath(url).replaceAll("\\", "/");
  } catch {
    return undefined;
  }
}

export function uriOfPath(path: string): string {
  return pathToFileURL(path).href;
}
