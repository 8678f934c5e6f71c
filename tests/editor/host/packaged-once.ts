import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { TestProject } from "vitest/node";
import { installEditorHost } from "./install.ts";
import type { Packaged } from "./packaged.ts";

declare module "vitest" {
  interface ProvidedContext {
    readonly packaged: Packaged;
  }
}

/** Has the editor installed and the extension packaged before the first test; gives what takes the package away. */
export default function setup(project: TestProject): () => void {
  const folder = mkdtempSync(join(tmpdir(), "edgewise-vsix-"));
  const vsix = join(folder, "edgewise.vsix");
  execFileSync("npm", ["run", "package", "--", "--out", vsix], { stdio: ["ignore", "ignore", "inherit"] });
  project.provide("packaged", { host: installEditorHost(), vsix });
  return () => rmSync(folder, { recursive: true, force: true });
}
