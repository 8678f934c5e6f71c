import { layout } from "../../../../src-core/checks/report/layout.ts";
import { ruleTests } from "../harness.ts";
import { layoutSnippets } from "./snippets/layout.ts";

ruleTests(layout, layoutSnippets);
