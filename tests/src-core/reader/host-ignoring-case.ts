import { hostOfFiles, type SourceHost } from "../../../src-core/reader/source-host.ts";

/** Files on a disk that finds them whatever the case of their names, as those of some systems do. */
export function hostIgnoringCase(files: Readonly<Record<string, string>>): SourceHost {
  const host = hostOfFiles(files);
  const ofFiles = new Map(Object.entries(files).map(([path, text]) => [path.toLowerCase(), text]));
  return { ...host, readText: (path) => ofFiles.get(path.toLowerCase()), ignoresCase: true };
}
