import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeAll } from "vitest";

/** URI of the folder that the extension `tests/editor/memory-files` provides. */
export const memoryFolder = "memory:/firmware";

/** Has that extension packaged before the tests of a file. */
export function memoryExtensionForTests(): { readonly vsix: string } {
  const made = { vsix: "" };
  let folder = "";
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "edgewise-memory-"));
    cpSync("tests/editor/memory-files", join(folder, "extension"), { recursive: true });
    made.vsix = join(folder, "memory-files.vsix");
    const options = ["--allow-missing-repository", "--skip-license", "--out", made.vsix];
    execFileSync(process.execPath, [resolve("node_modules/@vscode/vsce/vsce"), "package", ...options], {
      cwd: join(folder, "extension"),
      stdio: ["ignore", "ignore", "inherit"],
    });
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return made;
}
