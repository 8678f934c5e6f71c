import { joinPath, nameOf } from "../reader/paths.ts";
import type { SourceHost } from "../reader/source-host.ts";
import type { Folder } from "./folder-tree.ts";
import { foldersIn } from "./folder-tree.ts";
import { headerLanguage, isHeader, isSketchFile, type Language, unitLanguage } from "./languages.ts";

/** The language of a header: C++ where any C++ file below `folder` includes it, directly or through headers. */
export function languageOfHeader(host: SourceHost, header: string, folder: Folder): Language {
  const bySuffix = headerLanguage(nameOf(header));
  if (bySuffix !== undefined) return bySuffix;
  const including = includersByName(host, folder);
  const seen = new Set<string>();
  const waiting = [nameOf(header)];
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
    if (seen.has(name)) continue;
    seen.add(name);
    for (const includer of including.get(name) ?? []) {
      if (isSketchFile(includer) || unitLanguage(includer) === "c++") return "c++";
      if (headerLanguage(includer) === "c++") return "c++";
      if (isHeader(includer)) waiting.push(includer);
    }
  }
  return "c";
}

/** File name of each header included to the file names that include it. */
function includersByName(host: SourceHost, folder: Folder): ReadonlyMap<string, readonly string[]> {
  const includers = new Map<string, string[]>();
  for (const each of foldersIn(folder, () => true)) {
    for (const file of each.files) {
      if (!isHeader(file) && !isSketchFile(file) && unitLanguage(file) === undefined) continue;
      const text = host.readText(joinPath(each.path, file)) ?? "";
      for (const match of text.matchAll(/^[ \t]*#[ \t]*include[ \t]*[<"]([^>"\n]+)[>"]/gm)) {
        const name = nameOf(match[1] ?? "");
        const known = includers.get(name);
        if (known === undefined) includers.set(name, [file]);
        else known.push(file);
      }
    }
  }
  return includers;
}
