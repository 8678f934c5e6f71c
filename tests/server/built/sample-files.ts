import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** The files of a firmware of the sample workspace, with what its matrix is made of. */
export function sampleFiles(name: string, simulate: object): Record<string, string> {
  const folder = join("sample-workspace", name);
  const files = Object.fromEntries(
    readdirSync(folder).map((file) => [file, readFileSync(join(folder, file), "utf8")]),
  );
  const settings: object = JSON.parse(files["edgewise.json"] ?? "{}");
  return { ...files, "edgewise.json": JSON.stringify({ ...settings, simulate }) };
}
