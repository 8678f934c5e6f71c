import { type PlantedFault, sendsReport } from "./planted-fault.ts";

const byDatasheet = "16 (UBRR + 1) cycles: ATmega48P to 328P datasheet 8025I, table 19-1";

/** Bits of 833.3 us at 1200 baud; the divisors and delays that are written make others. */
export const wrongBits: readonly PlantedFault[] = [
  {
    style: "clock-interrupt-c",
    title: "the divisor is 29 too small",
    edits: [{ file: "pc.c", find: "(F_CPU / 16 / BAUD - 1)", put: "(F_CPU / 16 / BAUD - 30)" }],
    rule: "serial/bit-time",
    line: sendsReport["clock-interrupt-c"],
    measured: { least: 803.9, most: 804.1, why: `${byDatasheet}: 804 times 16 at 16 MHz` },
  },
  {
    style: "busy-wait-c",
    title: "a divisor that somebody guessed",
    edits: [
      { file: "pc.c", find: "UBRR0L = 383 & 0xFF;", put: "UBRR0L = 360 & 0xFF;" },
      { file: "pc.c", find: "UBRR0H = 383 >> 8;", put: "UBRR0H = 360 >> 8;" },
    ],
    rule: "serial/bit-time",
    // The PC takes no report, as the word before them has no right bits.
    line: { file: "pc.c", text: "UDR0 = 'H';" },
    measured: { least: 783.3, most: 783.5, why: `${byDatasheet}: 361 times 16 at 7.3728 MHz` },
    stroke: "circle",
  },
  {
    style: "class-sketch",
    title: "1250 baud",
    edits: [{ file: "SerialMouse.cpp", find: "port.begin(1200,", put: "port.begin(1250," }],
    rule: "serial/bit-time",
    line: { file: "SerialMouse.h", text: "port.write('M');" },
    measured: {
      least: 799.9,
      most: 800.1,
      why: "8 (UBRR + 1) cycles with U2X: datasheet 8025I, table 19-1; UBRR 1599 by HardwareSerial.cpp",
    },
  },
  {
    style: "tiny-usi",
    title: "the timer counts to 110",
    edits: [{ file: "line.c", find: "OCR0A = 103;", put: "OCR0A = 110;" }],
    rule: "serial/bit-time",
    line: { file: "line.c", text: "/* mark */" },
    measured: {
      least: 884,
      most: 892,
      why: "64 times 111 at 8 MHz are 888 us (ATtiny25/45/85 datasheet 2586, CTC mode); the handler comes a little sooner or later",
    },
  },
  {
    style: "remote-polling-c",
    title: "860 us for a bit",
    edits: [{ file: "serial.c", find: "#define BIT_US 833", put: "#define BIT_US 860" }],
    rule: "serial/bit-time",
    line: { file: "serial.c", text: "PORTB |= _BV(TX_PIN);", after: "if (value & 1)" },
    measured: {
      least: 855,
      most: 875,
      why: "the length that is written; edges come up to a turn of the loop late",
    },
  },
  {
    style: "usart-ring-cpp",
    title: "1150 baud",
    edits: [{ file: "uart.cpp", find: "baud = 1200;", put: "baud = 1150;" }],
    rule: "serial/bit-time",
    line: sendsReport["usart-ring-cpp"],
    measured: { least: 868.9, most: 870.1, why: "16 (UBRR + 1) cycles: 869 or 870 times 16 at 16 MHz" },
  },
];

/** The line rests at space: RS-232 has it at mark (EIA/TIA-232-E, 2.1.3). */
export const wrongRest: readonly PlantedFault[] = [
  {
    style: "tiny-usi",
    title: "begins at space",
    edits: [
      { file: "line.c", find: "    PORTB &= ~_BV(TX);\n    DDRB", put: "    PORTB |= _BV(TX);\n    DDRB" },
    ],
    rule: "serial/idle-level",
    // The pull-up is enough for that.
    line: { file: "line.c", text: "PORTB |= _BV(TX);", after: "void line_start" },
  },
  {
    style: "tiny-usi",
    title: "has no stop bit, and rests where the last bit left the line",
    edits: [
      { file: "line.c", find: "bits = 0x100 | (byte & 0x7F) << 1;", put: "bits = (byte & 0x7F) << 1;" },
    ],
    rule: "serial/idle-level",
    line: sendsReport["tiny-usi"],
  },
  {
    style: "remote-polling-c",
    title: "begins at space",
    edits: [
      {
        file: "serial.c",
        find: "    PORTB |= _BV(TX_PIN); /* mark, before the pin is an output */\n",
        put: "",
      },
    ],
    rule: "serial/idle-level",
    line: { file: "serial.c", text: "DDRB |= _BV(TX_PIN);" },
  },
  {
    style: "clock-interrupt-c",
    title: "is wired through a shifter that turns nothing over",
    edits: [{ file: "edgewise.json", find: '"shifter": "inverting"', put: '"shifter": "none"' }],
    rule: "serial/idle-level",
    line: { file: "pc.c", text: "UCSR0B = _BV(TXEN0);" },
  },
  {
    style: "busy-wait-c",
    title: "is wired through a shifter that turns nothing over",
    edits: [{ file: "edgewise.json", find: '"shifter": "inverting"', put: '"shifter": "none"' }],
    rule: "serial/idle-level",
    // RTS is turned over as well: it seems to be on, and the word goes out at once.
    line: { file: "pc.c", text: "UDR0 = 'H';" },
  },
  {
    style: "usart-ring-cpp",
    title: "is wired through a shifter that turns nothing over",
    edits: [{ file: "edgewise.json", find: '"shifter": "inverting"', put: '"shifter": "none"' }],
    rule: "serial/idle-level",
    line: { file: "uart.cpp", text: "UCSR1B = _BV(TXEN1);" },
  },
  {
    style: "class-sketch",
    title: "is wired through a shifter that turns nothing over",
    edits: [{ file: "class-sketch.ino", find: "shifter=inverting", put: "shifter=none" }],
    rule: "serial/idle-level",
    line: { file: "SerialMouse.cpp", text: "port.begin(1200, SERIAL_7N2);" },
  },
];

/** Reports without news fill the line, or news waits behind them for more than 250 ms. */
export const fullLine: readonly PlantedFault[] = [
  {
    style: "clock-interrupt-c",
    title: "reports are sent without end",
    edits: [
      {
        file: "pc.c",
        find: "    if (out_at == out_length && waiting_count > 0 && wanted) {\n        next_report();",
        put: "    if (out_at == out_length && wanted) {\n        if (waiting_count > 0) {\n            next_report();\n        } else {\n            out_length = build(out, 0, 0, told_left, told_middle, told_right);\n            out_at = 0;\n        }",
      },
    ],
    rule: "serial/throughput",
    line: sendsReport["clock-interrupt-c"],
    measured: {
      least: 38,
      most: 44.5,
      why: "9 bits at 1200 baud are 7.5 ms, three bytes 22.5 ms: 44.4 reports a second",
    },
    stroke: "click",
  },
  {
    style: "busy-wait-c",
    title: "a report is sent when nothing moved, too",
    edits: [
      {
        file: "pc.c",
        find: "    if (rest_x == 0 && rest_y == 0 && buttons == told) {\n        return;\n    }\n",
        put: "",
      },
    ],
    rule: "serial/throughput",
    line: sendsReport["busy-wait-c"],
    measured: {
      least: 22,
      most: 24.1,
      why: "10 bits at 1200 baud are 8.33 ms, five bytes 41.7 ms: 24 reports a second",
    },
    stroke: "rest",
  },
  {
    style: "class-sketch",
    title: "reports wait in the buffer of the serial class, and the mouse makes more than the line takes",
    edits: [
      {
        file: "SerialMouse.h",
        find: "return port.availableForWrite() == SERIAL_TX_BUFFER_SIZE - 1;",
        put: "return port.availableForWrite() > 3;",
      },
      { file: "Ps2Mouse.cpp", find: "command(SAMPLE_RATE, 40)", put: "command(SAMPLE_RATE, 100)" },
    ],
    rule: "serial/throughput",
    line: sendsReport["class-sketch"],
    measured: { least: 300, most: 600, why: "20 reports of three bytes of ten bits wait before a new one" },
    stroke: "slow-diagonals",
  },
  {
    style: "tiny-usi",
    title: "a report is sent when nothing moved, too",
    edits: [
      {
        file: "main.c",
        find: "report_at == 3 && on && (to_right != 0 || to_top != 0 || buttons != told)",
        put: "report_at == 3 && on",
      },
    ],
    rule: "serial/throughput",
    line: sendsReport["tiny-usi"],
    measured: {
      least: 38,
      most: 44.6,
      why: "nine bits of 832 us are 7.49 ms, three bytes 22.5 ms: 44.5 reports a second",
    },
    stroke: "rest",
  },
  {
    style: "usart-ring-cpp",
    title: "a report is sent when nothing moved, too",
    edits: [
      {
        file: "journey.cpp",
        find: "  if (count == 0) {\n    return false;\n  }",
        put: "  if (count == 0) {\n    build(report, 0, 0, 0, told);\n    return true;\n  }",
      },
    ],
    rule: "serial/throughput",
    line: sendsReport["usart-ring-cpp"],
    measured: {
      least: 28,
      most: 33.5,
      why: "9 bits at 1200 baud are 7.5 ms, four bytes 30 ms: 33.3 reports a second",
    },
    stroke: "rest",
  },
  {
    style: "remote-polling-c",
    title: "every answer of the mouse is passed on",
    edits: [
      {
        file: "main.c",
        find: "        if (!serial_is_wanted()) {\n            return;\n        }\n",
        put: "",
      },
      {
        file: "main.c",
        find: "    while (state.x != 0 || state.y != 0 || state.left != sent_left || state.right != sent_right\n        || state.middle != sent_middle) {",
        put: "    bool more = serial_is_wanted();\n\n    while (more) {",
      },
      {
        file: "main.c",
        find: "        state.y -= y;\n",
        put: "        state.y -= y;\n        more = state.x != 0 || state.y != 0;\n",
      },
    ],
    rule: "serial/throughput",
    line: sendsReport["remote-polling-c"],
    measured: {
      least: 22.2,
      most: 44.4,
      why: "22.5 ms for a report, and some milliseconds for the question to the mouse",
    },
    stroke: "rest",
  },
];
