import { codeOf } from "../../model/commands.ts";
import { ps2Bytes } from "../../model/quantities/ps2-bytes.ts";
import { ps2HostTiming } from "../../model/quantities/ps2-host-timing.ts";
import { ps2LineTiming } from "../../model/quantities/ps2-line-timing.ts";
import { ps2PowerOn } from "../../model/quantities/ps2-power-on.ts";
import { ps2TimeOuts } from "../../model/quantities/ps2-time-outs.ts";
import { acknowledge } from "../../model/replies.ts";
import { byteFromMouse, byteToMouse } from "../diagrams/ps2-bytes.ts";
import { waveSvg } from "../diagrams/wave-svg.ts";
import { page, table } from "../markdown/markdown.ts";
import type { ReferencePage } from "./page.ts";
import { quantityTable } from "./quantity-table.ts";

export function ps2Timing(): ReferencePage {
  const title = "The PS/2 wires";
  const from = byteFromMouse(acknowledge.code);
  const to = byteToMouse(codeOf("enable reporting"));
  return {
    name: "ps2-wires.md",
    title,
    about:
      "clock and data, the frames of bytes in both directions, and every time that either side has to keep",
    pictures: [
      { name: "byte-from-mouse.svg", text: waveSvg(from) },
      { name: "byte-to-mouse.svg", text: waveSvg(to) },
    ],
    text: page([
      `# ${title}`,
      "Clock and data are open collector: both sides pull a line low or let it go, and a resistor pulls it up. The mouse always makes " +
        "the clock, in both directions; the host can hold it low.",
      table(
        ["clock", "data", "means"],
        [
          ["high", "high", "idle: the mouse may send"],
          ["low", "either", "inhibited: the mouse keeps its bytes"],
          ["high", "low", "request to send: the mouse makes clocks and takes a byte"],
        ],
      ),
      "Source: The PS/2 Mouse/Keyboard Protocol, bus states.",
      "## From the mouse to the host",
      `![${from.description}](byte-from-mouse.svg)`,
      from.description,
      "## From the host to the mouse",
      `![${to.description}](byte-to-mouse.svg)`,
      to.description,
      "## What mouse and wires do",
      quantityTable(ps2LineTiming),
      "## What the host chooses",
      quantityTable(ps2HostTiming),
      "## How long bytes and reports take",
      quantityTable(ps2Bytes),
      "## How long the host waits",
      quantityTable(ps2TimeOuts),
      "## Power-on and reset",
      quantityTable(ps2PowerOn),
    ]),
  };
}
