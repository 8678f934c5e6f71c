import { hexText } from "../figures.ts";
import type { ReplyPart } from "../model/commands.ts";
import { acknowledge, selfTestPassed } from "../model/replies.ts";

/** Parts of a mouse's reply, as a list of them names each. */
export const replyWords: Readonly<Record<ReplyPart, string>> = {
  acknowledge: `${acknowledge.name} (${hexText(acknowledge.code)})`,
  "self-test-passed": `${selfTestPassed.name} (${hexText(selfTestPassed.code)})`,
  id: "its id",
  "movement-report": "a movement report",
  "status-packet": "three status bytes",
  "last-packet": "its last packet again",
};
