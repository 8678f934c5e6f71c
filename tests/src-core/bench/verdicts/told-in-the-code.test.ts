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

describe("a fault is told by its rule, where the code has to be changed", () => {
  test.each(planted)("$title", ({ edits, around, told }) => {
    const found = runEdited("ferry-c", edits, around);
    expect(found.map(({ rule, line }) => [rule, line])).toEqual(told);
  });
});
