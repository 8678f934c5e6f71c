import { clipMissing } from "../../../../src-core/checks/report/clip-missing.ts";
import { ruleTests } from "../harness.ts";
import { clipMissingSnippets } from "./snippets/clip-missing.ts";

ruleTests(clipMissing, clipMissingSnippets);
