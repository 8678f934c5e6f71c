import type { SourceHost } from "../../src-core/reader/source-host.ts";

/** Two hosts as one: paths for which `isOther` holds are the other's. */
export function routedFiles(
  host: SourceHost,
  other: SourceHost,
  isOther: (path: string) => boolean,
): SourceHost {
  const of = (path: string) => (isOther(path) ? other : host);
  return {
    readText: (path) => of(path).readText(path),
    listFolder: (path) => of(path).listFolder(path),
    ignoresCase: host.ignoresCase === true || other.ignoresCase === true,
  };
}
