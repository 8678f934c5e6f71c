import { inject } from "vitest";
import type { EditorHost } from "./install.ts";

/** What the tests work with: an editor, and the extension as it is handed out. */
export interface Packaged {
  readonly host: EditorHost;
  readonly vsix: string;
}

/** What was made before the first test. */
export function packagedForTests(): Packaged {
  return inject("packaged");
}
