import { signLost } from "../../../../src-core/checks/report/sign-lost.ts";
import { ruleTests } from "../harness.ts";
import { signLostSnippets } from "./snippets/sign-lost.ts";

ruleTests(signLost, signLostSnippets);
