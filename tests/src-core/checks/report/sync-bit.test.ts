import { syncBit } from "../../../../src-core/checks/report/sync-bit.ts";
import { ruleTests } from "../harness.ts";
import { syncBitSnippets } from "./snippets/sync-bit.ts";

ruleTests(syncBit, syncBitSnippets);
