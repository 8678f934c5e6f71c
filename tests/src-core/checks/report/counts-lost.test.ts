import { countsLost } from "../../../../src-core/checks/report/counts-lost.ts";
import { ruleTests } from "../harness.ts";
import { type Change, expected, versionIn, versionOf } from "../runs/versions.ts";

// What the mouse counted since its last report is what the next one says (EM84502 data sheet, section E: the counters start
// again at 0), so that the sum of all is how far it moved; at the PC likewise (mouse(4), Linux man-pages: x and y are the
// "delta in X" and Y "movement since last report"). Counts of a serial report go from -128 to 127, those of a PS/2 one from
// -255 to 255, and a report lasts 22.5 ms at 1200 baud, 7N1, beside 25 ms between those of a mouse at 40 a second.

const lost = "counts get lost on the way";

/** The byte goes to the PC here. */
const sent = (part: string): Change => {
  const line = "  if (report_at < 3) UDR0 = report[report_at++];";
  return [line, expected(line, "report[report_at++]", "report/counts-lost", part)];
};

/** Where the start bit is made in tests/firmwares/tiny-usi. */
const startBit = "            PORTB |= _BV(TX);";

const isNew = "dx != 0 || dy != 0 || first->buttons != sent_buttons;";
const takesWhatIsSent = "    first->dx -= dx;\n    first->dy -= dy;";

ruleTests(countsLost, {
  wrong: {
    "counts that do not fit into a report, to the sides": versionOf(
      { stroke: "flick" },
      [takesWhatIsSent, "    first->dx = 0;\n    first->dy -= dy;"],
      sent(lost),
    ),
    "what waits is overwritten": versionOf(
      { stroke: "flick" },
      ["  last->dx += dx;\n", "  last->dx = dx;\n"],
      sent(lost),
    ),
    "single counts are taken for noise": versionOf(
      { stroke: "nudge" },
      [
        "  uint8_t buttons = packet[0] & 3;\n",
        "  uint8_t buttons = packet[0] & 3;\n  if (dx == 1 || dx == -1) dx = 0;\n",
      ],
      sent(lost),
    ),
    "the sign of the mouse's y is forgotten": versionOf(
      { stroke: "circle" },
      ["packet[2] - (packet[0] & 0x20 ? 256 : 0)", "packet[2]"],
      sent(lost),
    ),
    "the right button is masked away": versionOf(
      { stroke: "all-at-once" },
      ["buttons = packet[0] & 3;", "buttons = packet[0] & 1;"],
      sent("the right button goes down or up"),
    ),
    "sums that forget what does not fit, upwards": versionIn(
      "tiny-usi",
      { stroke: "flick" },
      ["to_top -= dy;", "to_top = 0;"],
      [startBit, expected(startBit, "PORTB |= _BV(TX)", "report/counts-lost", lost)],
    ),
  },
  right: {
    "a queue of four": versionOf({ stroke: "all-at-once" }, [
      "queue_length < 16 && last",
      "queue_length < 4 && last",
    ]),
    "reports of at most 100 counts": versionOf({ stroke: "fast-diagonals" }, [
      "counts > 127 ? 127 : counts < -127 ? -127 : counts",
      "counts > 100 ? 100 : counts < -100 ? -100 : counts",
    ]),
    "reports without news are sent as well": versionOf({ stroke: "click" }, [isNew, "true;"]),
    "a sign taken from the ninth bit": versionOf({ stroke: "circle" }, [
      "packet[2] - (packet[0] & 0x20 ? 256 : 0)",
      "(int16_t)(packet[2] | (packet[0] & 0x20 ? 0xFF00 : 0))",
    ]),
    "sums instead of a queue": versionIn("tiny-usi", { stroke: "flick" }),
    "a queue of a class, for a wheel": versionIn("usart-ring-cpp", { stroke: "flick" }),
  },
});
