import { clipMissing } from "../../../../src-core/checks/report/clip-missing.ts";
import { ruleTests } from "../harness.ts";
import { clipMissingSnippets } from "./snippets/clip-missing.ts";
import { clippedByCallersSnippets } from "./snippets/clipped-by-callers.ts";

ruleTests(clipMissing, {
  wrong: { ...clipMissingSnippets.wrong, ...clippedByCallersSnippets.wrong },
  right: { ...clipMissingSnippets.right, ...clippedByCallersSnippets.right },
});
