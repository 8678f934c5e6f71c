import { buttonMap } from "../../../../src-core/checks/report/button-map.ts";
import { ruleTests } from "../harness.ts";
import { buttonMapSnippets } from "./snippets/button-map.ts";

ruleTests(buttonMap, buttonMapSnippets);
