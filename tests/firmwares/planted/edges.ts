import { freesData, type PlantedFault, pullsData } from "./planted-fault.ts";

const latest = "the delay that is written, beside 25 us of the article; the wait for the edge on top";

/** A bit to the mouse changes late. The PS/2 Mouse/Keyboard Protocol, Host-to-Device: 15 to 25 us after the falling edge. */
export const lateChanges: readonly PlantedFault[] = [
  {
    style: "usart-ring-cpp",
    title: "waits for the middle of the wrong half",
    edits: [
      {
        file: "port.cpp",
        find: "  if (bit) {\n    Data::release();",
        put: "  _delay_us(40);\n  if (bit) {\n    Data::release();",
      },
    ],
    rule: "ps2/sample-edge",
    line: freesData["usart-ring-cpp"],
    measured: { least: 40, most: 48, why: latest },
    mouse: "clock-at-10-khz",
  },
  {
    style: "remote-polling-c",
    title: "35 us after the edge",
    edits: [
      {
        file: "mouse.c",
        find: "        if (level) {\n",
        put: "        _delay_us(35);\n        if (level) {\n",
      },
    ],
    rule: "ps2/sample-edge",
    line: freesData["remote-polling-c"],
    measured: { least: 35, most: 50, why: latest },
    mouse: "clock-at-10-khz",
  },
  {
    style: "busy-wait-c",
    title: "30 us after the edge",
    edits: [
      {
        file: "ps2.c",
        find: "    if (bit) {\n        let_go(DAT);",
        put: "    _delay_us(30);\n    if (bit) {\n        let_go(DAT);",
      },
    ],
    rule: "ps2/sample-edge",
    line: freesData["busy-wait-c"],
    measured: { least: 30, most: 40, why: latest },
    mouse: "clock-at-10-khz",
  },
  {
    style: "tiny-usi",
    title: "so late that the clock has risen",
    edits: [
      {
        file: "sender.c",
        find: "    if (bit) {\n        let_go(DATA);",
        put: "    _delay_us(45);\n    if (bit) {\n        let_go(DATA);",
      },
    ],
    rule: "ps2/sample-edge",
    line: freesData["tiny-usi"],
    measured: {
      least: 4,
      most: 30,
      why: "45 us and the wait for the edge, in which the timer's handler may come, less the 40 us that the clock is low",
    },
  },
  {
    style: "class-sketch",
    title: "puts the bit on the line when the clock has risen",
    edits: [
      {
        file: "Ps2Wires.cpp",
        find: "  if (!awaitClock(false)) {\n    return false;\n  }\n  if (bit) {",
        put: "  if (!awaitClock(false) || !awaitClock(true)) {\n    return false;\n  }\n  if (bit) {",
      },
    ],
    rule: "ps2/sample-edge",
    line: freesData["class-sketch"],
  },
  {
    style: "clock-interrupt-c",
    title: "the handler puts a bit on the line 50 us after the edge",
    edits: [
      {
        file: "ps2.c",
        find: "            if (outgoing & 1) {",
        put: "            _delay_us(50);\n            if (outgoing & 1) {",
      },
    ],
    rule: "ps2/sample-edge",
    line: freesData["clock-interrupt-c"],
    measured: {
      least: 9,
      most: 20,
      why: "50 us and the way into the handler, less the 40 us that the clock is low",
    },
  },
];

/** Data is read while the mouse may change it: earlier than that it holds a bit for 5 us after the clock rose (LPC47M102, t2). */
export const wrongSamples: readonly PlantedFault[] = [
  {
    style: "clock-interrupt-c",
    title: "a delay before the bit is read",
    edits: [
      {
        file: "ps2.c",
        find: "    bool level = PIND & _BV(DATA);\n",
        put: "    if (!sending) {\n        _delay_us(60);\n    }\n    bool level = PIND & _BV(DATA);\n",
      },
    ],
    rule: "ps2/sample-edge",
    line: { file: "ps2.c", text: "bool level = PIND & _BV(DATA);" },
  },
  {
    style: "clock-interrupt-c",
    title: "the interrupt is on the rising edge, and comes when the clock is let go as well",
    edits: [{ file: "ps2.c", find: "EICRA = _BV(ISC11);", put: "EICRA = _BV(ISC11) | _BV(ISC10);" }],
    rule: "ps2/sample-edge",
    line: { file: "ps2.c", text: "bool level = PIND & _BV(DATA);" },
  },
  {
    style: "usart-ring-cpp",
    title: "a delay at the beginning of the handler",
    edits: [
      {
        file: "port.cpp",
        find: "ISR(INT4_vect) {\n",
        put: "ISR(INT4_vect) {\n  _delay_us(60);\n",
      },
    ],
    rule: "ps2/sample-edge",
    line: { file: "port.cpp", text: "static bool isHigh()" },
  },
  {
    style: "busy-wait-c",
    title: "a delay between edge and look",
    edits: [
      {
        file: "ps2.c",
        find: "        value >>= 1;\n        if (is_high(DAT)) {",
        put: "        value >>= 1;\n        _delay_us(60);\n        if (is_high(DAT)) {",
      },
    ],
    rule: "ps2/sample-edge",
    line: { file: "ps2.c", text: "if (is_high(DAT)) {", after: "_delay_us(60);" },
  },
  {
    style: "remote-polling-c",
    title: "60 us after the edge",
    edits: [
      {
        file: "mouse.c",
        find: "        level = PIND & _BV(DATA_PIN) ? 1 : 0;",
        put: "        _delay_us(60);\n        level = PIND & _BV(DATA_PIN) ? 1 : 0;",
      },
    ],
    rule: "ps2/sample-edge",
    line: { file: "mouse.c", text: "level = PIND & _BV(DATA_PIN) ? 1 : 0;" },
  },
];

/** Edges of the mouse's clock, 60 to 100 us apart, come while something else runs. */
export const missedEdges: readonly PlantedFault[] = [
  {
    style: "clock-interrupt-c",
    title: "interrupts are off for 180 us whenever the time is read",
    edits: [
      {
        file: "ticks.c",
        find: "    cli();\n    now = count;",
        put: "    cli();\n    __builtin_avr_delay_cycles(16 * 180);\n    now = count;",
      },
    ],
    rule: "ps2/clock-missed",
    line: { file: "ticks.c", text: "__builtin_avr_delay_cycles(16 * 180);" },
  },
  {
    style: "class-sketch",
    title: "interrupts are off for 200 us whenever a byte is taken",
    edits: [
      {
        file: "Ps2Wires.cpp",
        find: "  uint8_t byte = bytes[first];",
        put: "  delayMicroseconds(200);\n  uint8_t byte = bytes[first];",
      },
    ],
    rule: "ps2/clock-missed",
    line: { file: "Ps2Wires.cpp", text: "delayMicroseconds(200);" },
    stroke: "circle",
  },
  {
    style: "clock-interrupt-c",
    title: "the handler of the timer takes 170 us",
    edits: [
      {
        file: "ticks.c",
        find: "    count++;\n",
        put: "    count++;\n    __builtin_avr_delay_cycles(16 * 170);\n",
      },
    ],
    rule: "ps2/clock-missed",
    line: { file: "ticks.c", text: "__builtin_avr_delay_cycles(16 * 170);" },
    stroke: "circle",
  },
  {
    style: "usart-ring-cpp",
    title: "the handler of the timer takes 200 us",
    edits: [
      {
        file: "ticks.cpp",
        find: "  milliseconds++;\n",
        put: "  milliseconds++;\n  __builtin_avr_delay_cycles(16 * 200);\n",
      },
    ],
    rule: "ps2/clock-missed",
    line: { file: "ticks.cpp", text: "__builtin_avr_delay_cycles(16 * 200);" },
    stroke: "circle",
  },
  {
    style: "class-sketch",
    title: "the function of the clock's interrupt takes longer than a period",
    edits: [
      {
        file: "Ps2Wires.cpp",
        find: "  bool bit = data.isHigh();\n  if (busy) {\n    return;\n  }\n",
        put: "  bool bit = data.isHigh();\n  if (busy) {\n    return;\n  }\n  delayMicroseconds(170);\n",
      },
    ],
    rule: "ps2/clock-missed",
    line: { file: "Ps2Wires.cpp", text: "delayMicroseconds(170);" },
  },
  {
    style: "busy-wait-c",
    title: "rests for two periods of the clock before the parity bit",
    edits: [
      {
        file: "ps2.c",
        find: "            ones++;\n        }\n    }\n",
        put: "            ones++;\n        }\n    }\n    _delay_us(170);\n",
      },
    ],
    rule: "ps2/clock-missed",
    line: { file: "ps2.c", text: "_delay_us(170);" },
  },
  {
    style: "remote-polling-c",
    title: "rests for two periods of the clock in the middle of a byte",
    edits: [
      {
        file: "mouse.c",
        find: "            *value = (*value >> 1) | (level << 7);\n        }\n",
        put: "            *value = (*value >> 1) | (level << 7);\n        }\n        if (i == 3) {\n            _delay_us(170);\n        }\n",
      },
    ],
    rule: "ps2/clock-missed",
    line: { file: "mouse.c", text: "_delay_us(170);" },
  },
];

/** Parity of bytes to the mouse: data and parity bit have an odd number of ones. */
export const wrongParity: readonly PlantedFault[] = [
  {
    style: "clock-interrupt-c",
    title: "even parity",
    edits: [{ file: "ps2.c", find: "is_odd(byte) ? 0 : 0x100;", put: "is_odd(byte) ? 0x100 : 0;" }],
    rule: "ps2/parity-wrong",
    line: pullsData["clock-interrupt-c"],
  },
  {
    style: "busy-wait-c",
    title: "the parity begins with 0",
    edits: [{ file: "ps2.c", find: "uint8_t parity = 1;", put: "uint8_t parity = 0;" }],
    rule: "ps2/parity-wrong",
    line: pullsData["busy-wait-c"],
  },
  {
    style: "class-sketch",
    title: "the parity begins with even",
    edits: [{ file: "Ps2Wires.cpp", find: "bool odd = true;", put: "bool odd = false;" }],
    rule: "ps2/parity-wrong",
    line: pullsData["class-sketch"],
  },
  {
    style: "tiny-usi",
    title: "the parity begins with even",
    edits: [{ file: "sender.c", find: "bool odd = true;", put: "bool odd = false;" }],
    rule: "ps2/parity-wrong",
    line: pullsData["tiny-usi"],
  },
  {
    style: "usart-ring-cpp",
    title: "the parity bit is always one; 200 (C8) has three ones already",
    edits: [{ file: "port.cpp", find: "    parity ^= bit;\n", put: "" }],
    rule: "ps2/parity-wrong",
    line: freesData["usart-ring-cpp"],
  },
  {
    style: "remote-polling-c",
    title: "the parity begins with 0",
    edits: [{ file: "mouse.c", find: "    uint8_t parity = 1;", put: "    uint8_t parity = 0;" }],
    rule: "ps2/parity-wrong",
    line: pullsData["remote-polling-c"],
  },
];
