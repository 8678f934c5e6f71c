import { execFileSync } from "node:child_process";

/** Whether a program of this name is on the path. */
export function isInstalled(program: string): boolean {
  try {
    execFileSync(program, ["--version"], { stdio: "ignore" });
    return true;
  } catch {
    return false;
  }
}
