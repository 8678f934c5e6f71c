import { spawnSync } from "node:child_process";

/** What the compiler says about a text; empty where it takes it. */
export function complaints(command: string, options: readonly string[], text: string): string {
  const { error, stderr } = spawnSync(command, [...options, "-fsyntax-only", "-w", "-"], {
    input: text,
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
  if (error !== undefined) throw error;
  return stderr;
}

/** A text as the compiler's preprocessor leaves it. */
export function preprocessed(command: string, options: readonly string[], text: string): string {
  const { error, status, stdout, stderr } = spawnSync(command, [...options, "-E", "-P", "-w", "-"], {
    input: text,
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
  if (error !== undefined || status !== 0) throw error ?? new Error(stderr);
  return stdout;
}
