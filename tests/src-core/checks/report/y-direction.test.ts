import { yDirection } from "../../../../src-core/checks/report/y-direction.ts";
import { ruleTests } from "../harness.ts";
import { type Cell, expected, versionOf } from "../runs/versions.ts";
import { yDirectionSnippets } from "./snippets/y-direction.ts";

/** The encoder is right and what it is handed is not: the mouse counts upwards (HT82M35X data sheet, p. 3). */
const handedDown = (cell: Cell, part: string) => {
  const line = "  if (report_at < 3) UDR0 = report[report_at++];";
  return versionOf(
    cell,
    [
      "int16_t dy = packet[2] - (packet[0] & 0x20 ? 256 : 0);",
      "int16_t dy = (packet[0] & 0x20 ? 256 : 0) - packet[2];",
    ],
    [line, expected(line, "report[report_at++]", "report/y-direction", part)],
  );
};

ruleTests(yDirection, {
  wrong: {
    ...yDirectionSnippets.wrong,
    "turned over before it is encoded": handedDown({ stroke: "circle" }, "up and down are exchanged"),
    "turned over, in a stroke that ends as high as it began": handedDown({ stroke: "all-at-once" }, "alike"),
    "turned over, with a mouse that is unplugged": handedDown(
      { stroke: "drag", mouse: "unplugged-and-plugged-again" },
      "up and down are exchanged",
    ),
  },
  right: { ...yDirectionSnippets.right, "a whole firmware": versionOf({ stroke: "circle" }) },
});
