import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";

/** One firmware: its files by path. */
export interface SampleProject {
  readonly name: string;
  readonly files: Readonly<Record<string, string>>;
}

/** The firmwares of the sample workspace. */
export const sampleProjects: readonly SampleProject[] = projectsIn("sample-workspace", /./);

/** Whole firmwares in other styles, classes among them. */
export const styleProjects: readonly SampleProject[] = projectsIn("tests/firmwares", /-/);

function projectsIn(root: string, named: RegExp): readonly SampleProject[] {
  return readdirSync(root)
    .filter((name) => named.test(name) && statSync(join(root, name)).isDirectory())
    .map((name) => ({
      name,
      files: Object.fromEntries(
        readdirSync(join(root, name)).map((file) => [file, readFileSync(join(root, name, file), "utf8")]),
      ),
    }));
}

/** The sources of a sample: its settings and texts for people left out. */
export function sourcesOf({ files }: SampleProject): readonly (readonly [file: string, text: string])[] {
  return Object.entries(files).filter(([file]) => /\.(c|h|cpp|ino)$/.test(file));
}
