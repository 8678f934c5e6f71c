import { length } from "../../../../src-core/checks/report/length.ts";
import { ruleTests } from "../harness.ts";
import { lengthSnippets } from "./snippets/length.ts";

ruleTests(length, lengthSnippets);
