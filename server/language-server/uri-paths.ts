/** `scheme:`, `//authority`, path; neither query nor fragment, by which editors name versions of files. */
const plainUri = /^([a-z][a-z0-9+.-]*):(?:\/\/([^/?#]*))?(\/[^?#]*)$/i;
const foreignPath = /^\/([a-z][a-z0-9+.-]+):([^/]*)(.*)$/i;
const driveLetter = /^\/[A-Za-z]:/;

/**
 * The core's path of a URI: absolute, with `/`. That of a `file:` URI is the disk's; that of any other begins with the
 * scheme and the authority, as in `/memory:host/folder/main.c`, and the root of what provides it has no `/` behind them, as
 * projects are named. Undefined for what names no file: a malformed URI, one with a query or a fragment.
 */
export function pathOfUri(uri: string): string | undefined {
  const [, scheme, authority = "", encoded = ""] = plainUri.exec(uri) ?? [];
  const path = decoded(encoded);
  if (scheme === undefined || path === undefined) return undefined;
  if (scheme.toLowerCase() !== "file") return `/${scheme}:${authority}${path.replace(/\/+$/, "")}`;
  const server = decoded(authority);
  if (server === undefined) return undefined;
  if (server !== "") return `//${server}${path}`;
  return driveLetter.test(path) ? path.slice(1) : path;
}

export function uriOfPath(path: string): string {
  const [, scheme, authority, rest = ""] = foreignPath.exec(path) ?? [];
  if (scheme !== undefined) {
    return `${scheme}:${authority === "" ? "" : `//${authority}`}${encodedPath(rest === "" ? "/" : rest)}`;
  }
  const [, server, below] = /^\/\/([^/]+)(\/.*)$/.exec(path) ?? [];
  if (server !== undefined && below !== undefined) {
    return `file://${encodeURIComponent(server)}${encodedPath(below)}`;
  }
  return `file://${encodedPath(path.startsWith("/") ? path : `/${path}`)}`;
}

/** Whether it is the path of another URI than a `file:` one, which no disk has. */
export function isForeign(path: string): boolean {
  return foreignPath.test(path);
}

function decoded(part: string): string | undefined {
  // A slash within a name would be taken for one between two.
  if (/%2f/i.test(part)) return undefined;
  try {
    return decodeURIComponent(part);
  } catch {
    return undefined;
  }
}

/** What a URL encodes in its path, and what it would take for something else. */
function encodedPath(path: string): string {
  const url = new URL("file:///");
  url.pathname = path
    .replaceAll("%", "%25")
    .replaceAll("\\", "%5C")
    .replaceAll("\n", "%0A")
    .replaceAll("\r", "%0D")
    .replaceAll("\t", "%09");
  // RFC 3986 wants brackets encoded, which a URL leaves.
  return url.pathname.replaceAll("[", "%5B").replaceAll("]", "%5D");
}
