import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";

/** A folder of its own for one test, with these files in it. */
export class ScratchFolder {
  readonly path = mkdtempSync(join(tmpdir(), "edgewise-test-"));

  constructor(files: Readonly<Record<string, string>>) {
    for (const [name, text] of Object.entries(files)) this.write(name, text);
  }

  write(name: string, text: string): void {
    const place = join(this.path, name);
    mkdirSync(dirname(place), { recursive: true });
    writeFileSync(place, text);
  }

  remove(): void {
    rmSync(this.path, { recursive: true, force: true });
  }
}
