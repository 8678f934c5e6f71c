import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";

/** One firmware of the sample workspace: its files by path. */
export interface SampleProject {
  readonly name: string;
  readonly files: Readonly<Record<string, string>>;
}

const root = "sample-workspace";

export const sampleProjects: readonly SampleProject[] = readdirSync(root)
  .filter((name) => statSync(join(root, name)).isDirectory())
  .map((name) => ({
    name,
    files: Object.fromEntries(
      readdirSync(join(root, name)).map((file) => [file, readFileSync(join(root, name, file), "utf8")]),
    ),
  }));

/** The sources of a sample: its settings and texts for people left out. */
export function sourcesOf({ files }: SampleProject): readonly (readonly [file: string, text: string])[] {
  return Object.entries(files).filter(([file]) => /\.(c|h|cpp|ino)$/.test(file));
}
