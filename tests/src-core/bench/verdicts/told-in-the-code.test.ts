import { describe, expect, test } from "vitest";
import { type Around, type Edit, runEdited } from "../observing/edited-samples.ts";

/**
 * The sample firmware with one fault edited in: what is expected is the rule by whose text in the catalogue the edit is wrong,
 * at the line that has to be changed.
 */
interface Planted {
  readonly title: string;
  readonly edits: readonly Edit[];
  readonly around?: Around;
  readonly told: readonly (readonly [rule: string, line: string])[];
}

const takesAnyFirstByte: Edit = [
  "ps2.c",
  "if (packet_length == 0 && !(value & 0x08)) {",
  "if (packet_length > 3) {",
];
const forgetsGaps: Edit = [
  "ps2.c",
  "if (packet_length > 0 && (uint16_t)",
  "if (packet_length > 3 && (uint16_t)",
];
const collects = "packet[packet_length++] = value;";

const planted: readonly Planted[] = [
  {
    title: "bytes are put together wrongly after a restart of the mouse, which is not noticed either",
    edits: [takesAnyFirstByte, forgetsGaps],
    around: { mouse: "restarts-itself" },
    told: [
      ["ps2/packet-resync", collects],
      ["ps2/reporting-not-enabled", "&& command(CMD_ENABLE_REPORTING);"],
    ],
  },
  {
    title: "parity is checked, and the bytes behind a wrong one are put together wrongly",
    edits: [takesAnyFirstByte, forgetsGaps],
    around: { mouse: "disturbed-data" },
    told: [["ps2/packet-resync", collects]],
  },
  {
    title: "first bytes are known by their bit, and gaps are not looked at",
    edits: [forgetsGaps],
    around: { mouse: "disturbed-data" },
    told: [["ps2/packet-resync", collects]],
  },
  {
    title: "parity is not looked at",
    edits: [["ps2.c", "bit && (frame_ones & 1)", "bit"]],
    around: { mouse: "disturbed-data" },
    told: [["ps2/parity-unchecked", "return PS2_PIN & _BV(PS2_DATA);"]],
  },
  {
    title: "the identification is not sent",
    edits: [["main.c", "        serial_send(IDENTIFICATION);\n", ""]],
    told: [["serial/ident-missing", "return !(RTS_PIN & _BV(RTS_BIT));"]],
  },
  {
    title: "reporting is not enabled",
    edits: [["ps2.c", "\n        && command(CMD_ENABLE_REPORTING);", ";"]],
    told: [["ps2/reporting-not-enabled", "&& command(RESOLUTION);"]],
  },
  {
    title: "a table has another command in its place",
    edits: [
      ["ps2.c", "&& command(CMD_ENABLE_REPORTING);", "&& command(orders[order_now]);"],
      [
        "ps2.c",
        "static bool command(",
        "static const uint8_t orders[] = {0xF5, 0xF5};\nstatic volatile uint8_t order_now;\n\nstatic bool command(",
      ],
    ],
    told: [["ps2/reporting-not-enabled", "&& command(orders[order_now]);"]],
  },
  {
    title: "in mid-stroke it waits for the clock with interrupts off, for ever",
    edits: [
      [
        "main.c",
        "            report_add(&movement);",
        `            static uint8_t nth;
            report_add(&movement);
            if (++nth == 10) {
                cli();
                PORTD &= ~_BV(PORTD2);
                DDRD |= _BV(DDD2);
                while (!(PIND & _BV(PIND2))) { }
            }`,
      ],
    ],
    told: [["ps2/wait-forever", "while (!(PIND & _BV(PIND2))) { }"]],
  },
];

/** The mouse's chip may take 25 ms for its answer (EM84502, section D), and 1,000 ms for its self-test. */
const givesUp: readonly (Planted & { readonly sample: string })[] = [
  {
    title: "answers of the mouse have 5 ms, and then it is tried again from the start, half a second later",
    sample: "ferry-c",
    edits: [["ps2.c", "REPLY_TIMEOUT_MS 30", "REPLY_TIMEOUT_MS 5"]],
    around: { mouse: "answers-late" },
    told: [["ps2/reply-timeout-short", "while (ring_tail == ring_head) {"]],
  },
  {
    title: "the same in the sketch",
    sample: "ferry-sketch",
    edits: [["mouse_setup.ino", "REPLY_TIMEOUT_MS = 30", "REPLY_TIMEOUT_MS = 5"]],
    around: { mouse: "answers-late" },
    told: [["ps2/reply-timeout-short", "if (millis() - since > timeoutMs) {"]],
  },
  {
    title: "the self-test has 400 ms, and more than a second later it is tried again",
    sample: "ferry-c",
    edits: [
      ["ps2.c", "SELF_TEST_TIMEOUT_MS 1200", "SELF_TEST_TIMEOUT_MS 400"],
      ["main.c", "RETRY_MS 500", "RETRY_MS 1500"],
    ],
    around: { mouse: "slow-to-start" },
    told: [["ps2/reset-wait-short", "while (ring_tail == ring_head) {"]],
  },
  {
    title: "the answer is waited for, and another one is expected",
    sample: "ferry-c",
    edits: [["ps2.c", "REPLY_ACKNOWLEDGE = 0xFA", "REPLY_ACKNOWLEDGE = 0xFB"]],
    around: { mouse: "answers-late" },
    told: [["ps2/reporting-not-enabled", "return command(CMD_RESET)"]],
  },
  {
    title: "the answer is waited for behind a pause, and another one is expected",
    sample: "ferry-c",
    edits: [
      ["ps2.c", "REPLY_ACKNOWLEDGE = 0xFA", "REPLY_ACKNOWLEDGE = 0xFB"],
      [
        "ps2.c",
        "    while (ring_tail == ring_head) {",
        "    _delay_ms(4);\n    while (ring_tail == ring_head) {",
      ],
    ],
    around: { mouse: "answers-late" },
    told: [["ps2/reporting-not-enabled", "return command(CMD_RESET)"]],
  },
];

test.each(givesUp)("who gives the mouse up: $title", ({ sample, edits, around, told }) => {
  const found = runEdited(sample, edits, { stroke: "click", ...around });
  expect(found.map(({ rule, line }) => [rule, line])).toEqual(told);
});

describe.each(["ferry-c", "ferry-sketch"])("%s waits long enough", (sample) => {
  test.each(["answers-late", "slow-to-start"])("for the mouse %s", (mouse) => {
    expect(runEdited(sample, [], { mouse, stroke: "click" })).toEqual([]);
  });
});

describe("a fault is told by its rule, where the code has to be changed", () => {
  test.each(planted)("$title", ({ edits, around, told }) => {
    const found = runEdited("ferry-c", edits, around);
    expect(found.map(({ rule, line }) => [rule, line])).toEqual(told);
  });
});

/** 100 us with interrupts off in every turn of the main loop: a fall of the clock is missed then, whatever the UART does. */
const deafNowAndThen: Edit = [
  "main.c",
  "        send_what_is_due();\n    }\n}",
  "        send_what_is_due();\n        cli();\n        _delay_us(170);\n        sei();\n    }\n}",
];
const withDelays: Edit = [
  "main.c",
  "#include <avr/interrupt.h>",
  "#include <avr/interrupt.h>\n#include <util/delay.h>",
];

describe("edges that are missed while a byte is on the serial line", () => {
  test("are not blamed on it where the USART sends by itself", () => {
    const found = runEdited("ferry-c", [withDelays, deafNowAndThen]);
    expect(found.map(({ rule }) => rule)).not.toContain("serial/blocks-receive");
    expect(found.map(({ rule }) => rule)).toContain("ps2/clock-missed");
  });

  test("are where the code waits for the USART with interrupts off", () => {
    const waits: Edit = [
      "main.c",
      "        serial_send(report[report_at++]);",
      "        serial_send(report[report_at++]);\n        cli();\n        while (!serial_can_send()) {\n        }\n        sei();",
    ];
    const found = runEdited("ferry-c", [waits, ["ps2.c", "SAMPLE_RATE 40", "SAMPLE_RATE 100"]]);
    expect(found.map(({ rule }) => rule)).toContain("serial/blocks-receive");
  });
});
