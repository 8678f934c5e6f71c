import { describe, expect, test } from "vitest";
import { type Around, type Edit, runEdited } from "./edited-samples.ts";

/**
 * The sample firmwares with one fault edited in that only the chip sees. What is expected is what the documents say of the
 * edit: The PS/2 Mouse/Keyboard Protocol, Device-to-Host (data is read after the clock fell, while it is low; a period is 60 to
 * 100 us), and the ATmega328P's data sheet (one flag for each interrupt; a number of two bytes is read by two instructions).
 */
interface Planted {
  readonly title: string;
  readonly sample: "ferry-c" | "ferry-sketch";
  readonly edits: readonly Edit[];
  readonly around?: Around;
  readonly rule: string;
  /** A part of the line that is told. */
  readonly line: string;
}

const busy = "static void busy(void)\n{\n    cli();\n    _delay_us(250);\n    sei();\n}\n";

const planted: readonly Planted[] = [
  {
    title: "reads data on the rising edge",
    sample: "ferry-c",
    edits: [["ps2.c", "EICRA = _BV(ISC01);", "EICRA = _BV(ISC01) | _BV(ISC00);"]],
    rule: "ps2/sample-edge",
    line: "return PS2_PIN & _BV(PS2_DATA);",
  },
  {
    title: "waits in the handler until the clock is high again",
    sample: "ferry-c",
    edits: [
      ["ps2.c", "    bool bit = data_is_high();", "    _delay_us(45);\n    bool bit = data_is_high();"],
    ],
    around: { mouse: "clock-at-16-7-khz" },
    rule: "ps2/sample-edge",
    line: "return PS2_PIN & _BV(PS2_DATA);",
  },
  {
    title: "attaches its function to the rising edge",
    sample: "ferry-sketch",
    edits: [["ferry-sketch.ino", "FALLING", "RISING"]],
    rule: "ps2/sample-edge",
    line: "bool bit = digitalRead(dataPin);",
  },
  {
    title: "keeps interrupts off for 250 us after each report",
    sample: "ferry-c",
    edits: [
      [
        "main.c",
        "#include <avr/interrupt.h>\n",
        `#include <avr/interrupt.h>\n#include <util/delay.h>\n${busy}`,
      ],
      [
        "main.c",
        "            report_add(&movement);",
        "            report_add(&movement);\n            busy();",
      ],
      // The next report comes while the code is busy.
      ["ps2.c", "#define SAMPLE_RATE 40", "#define SAMPLE_RATE 200"],
      [
        "main.c",
        "        send_what_is_due();\n    }\n}",
        "        send_what_is_due();\n        busy();\n    }\n}",
      ],
    ],
    rule: "ps2/clock-missed",
    line: "_delay_us(250);",
  },
  {
    title: "reads a counter of two bytes with interrupts on",
    sample: "ferry-c",
    edits: [["clock.c", "    ATOMIC_BLOCK(ATOMIC_RESTORESTATE)\n", ""]],
    rule: "board/shared-not-atomic",
    line: "now = milliseconds;",
  },
];

describe("a firmware with one fault that the wires do not show", () => {
  test.each(planted)("$title", ({ sample, edits, around, rule, line }) => {
    const told = runEdited(sample, edits, around);
    expect(told.map((each) => each.rule)).toEqual([rule]);
    expect(told[0]?.line).toContain(line);
  });
});
