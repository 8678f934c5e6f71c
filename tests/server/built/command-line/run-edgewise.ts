import { spawnSync } from "node:child_process";
import { program } from "../program.ts";

export interface Run {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the built command in `folder`. */
export function edgewise(folder: string, ...words: readonly string[]): Run {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...words], {
    cwd: folder,
    encoding: "utf8",
    env: { ...process.env, NO_COLOR: "" },
  });
  return { status, stdout, stderr };
}
