import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll } from "vitest";
import { type EditorHost, installEditorHost } from "./install.ts";

/** What the tests of a file work with. */
export interface Packaged {
  host: EditorHost;
  vsix: string;
}

/** Has the editor installed and the extension packaged before the tests of a file. */
export function packagedForTests(): Packaged {
  const packaged: Packaged = { host: { node: "", entry: "" }, vsix: "" };
  let folder = "";
  beforeAll(() => {
    packaged.host = installEditorHost();
    folder = mkdtempSync(join(tmpdir(), "edgewise-vsix-"));
    packaged.vsix = join(folder, "edgewise.vsix");
    execFileSync("npm", ["run", "package", "--", "--out", packaged.vsix], {
      stdio: ["ignore", "ignore", "inherit"],
    });
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return packaged;
}
