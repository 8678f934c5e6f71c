import { yDirection } from "../../../../src-core/checks/report/y-direction.ts";
import { ruleTests } from "../harness.ts";
import { yDirectionSnippets } from "./snippets/y-direction.ts";

ruleTests(yDirection, yDirectionSnippets);
