import { collectsReport, freesClock, type PlantedFault, pullsClock, readsBits } from "./planted-fault.ts";

/** The mouse answers FE, send that again, and the firmware goes on. */
export const ignoredAnswers: readonly PlantedFault[] = [
  {
    style: "clock-interrupt-c",
    title: "any answer is as good as an acknowledge",
    edits: [
      {
        file: "mouse.c",
        find: "frame == PS2_BYTE && byte == ACKNOWLEDGE",
        put: "frame == PS2_BYTE",
      },
    ],
    rule: "ps2/ack-ignored",
    line: [pullsClock["clock-interrupt-c"], freesClock["clock-interrupt-c"]],
    mouse: "asks-for-resend",
  },
  {
    style: "busy-wait-c",
    title: "the answer is read and not looked at",
    edits: [
      {
        file: "main.c",
        find: "        if (reply != AGAIN_PLEASE) {\n            return reply == FINE;\n        }",
        put: "        return 1;",
      },
    ],
    rule: "ps2/ack-ignored",
    line: pullsClock["busy-wait-c"],
    mouse: "asks-for-resend",
  },
  {
    style: "class-sketch",
    title: "the answer is read and not looked at",
    edits: [
      {
        file: "Ps2Mouse.cpp",
        find: "    if (reply != AGAIN) {\n      return reply == ACKNOWLEDGED;\n    }",
        put: "    return true;",
      },
    ],
    rule: "ps2/ack-ignored",
    line: pullsClock["class-sketch"],
    mouse: "asks-for-resend",
  },
  {
    style: "tiny-usi",
    title: "the answer is read and not looked at",
    edits: [
      {
        file: "main.c",
        find: "        if (reply != ONCE_MORE) {\n            return reply == GOOD;\n        }",
        put: "        return true;",
      },
    ],
    rule: "ps2/ack-ignored",
    line: pullsClock["tiny-usi"],
    mouse: "asks-for-resend",
  },
  {
    style: "usart-ring-cpp",
    title: "a byte that has to be sent again is taken for an acknowledge",
    edits: [
      {
        file: "mouse.cpp",
        find: "    if (came != sendAgain) {\n      return came == acknowledge;\n    }",
        put: "    return came == acknowledge || came == sendAgain;",
      },
    ],
    rule: "ps2/ack-ignored",
    line: [pullsClock["usart-ring-cpp"], freesClock["usart-ring-cpp"]],
    mouse: "asks-for-resend",
  },
  {
    style: "remote-polling-c",
    title: "the answer is read and not looked at",
    edits: [
      {
        file: "mouse.c",
        find: "        if (reply != RESEND_REQUEST) {\n            return reply == ACKNOWLEDGED;\n        }",
        put: "        return true;",
      },
    ],
    rule: "ps2/ack-ignored",
    line: pullsClock["remote-polling-c"],
    mouse: "asks-for-resend",
  },
];

const written = "the wait that is written, to the next tick, and what it takes to give up";

/** The mouse may answer 25 ms after the request (EM84502, section D), and begin to clock 15 ms after it. */
export const shortWaits: readonly PlantedFault[] = [
  {
    style: "clock-interrupt-c",
    title: "an answer has 5 ms, then the byte is sent again",
    edits: [
      {
        file: "mouse.c",
        find: "        } else if (frame != PS2_NONE || is_over(REPLY_MS)) {\n            enter(RESTING);",
        put: "        } else if (frame != PS2_NONE || is_over(5)) {\n            again();",
      },
    ],
    rule: "ps2/reply-timeout-short",
    line: pullsClock["clock-interrupt-c"],
    measured: { least: 4.9, most: 7, why: written },
    mouse: "answers-late",
  },
  {
    style: "busy-wait-c",
    title: "an answer has 6 ms, then the byte is sent again",
    edits: [
      {
        file: "main.c",
        find: "answer(&reply, TICKS(REPLY_MS)) != OK) {\n            return 0;",
        put: "answer(&reply, TICKS(6)) != OK) {\n            continue;",
      },
    ],
    rule: "ps2/reply-timeout-short",
    line: pullsClock["busy-wait-c"],
    measured: { least: 5.9, most: 8, why: written },
    mouse: "answers-late",
  },
  {
    style: "class-sketch",
    title: "an answer has 5 ms, then the byte is sent again",
    edits: [
      {
        file: "Ps2Mouse.cpp",
        find: "!receive(reply, REPLY_MS)) {\n      return false;",
        put: "!receive(reply, 5)) {\n      continue;",
      },
    ],
    rule: "ps2/reply-timeout-short",
    line: pullsClock["class-sketch"],
    measured: { least: 4, most: 8, why: `${written}; millis() goes on by two now and then (wiring.c)` },
    mouse: "answers-late",
  },
  {
    style: "tiny-usi",
    title: "an answer has 4 ms, then the byte is sent again",
    edits: [
      {
        file: "main.c",
        find: "!next_byte(&reply, REPLY_TICKS)) {\n            return false;",
        put: "!next_byte(&reply, TICKS(4))) {\n            continue;",
      },
    ],
    rule: "ps2/reply-timeout-short",
    line: pullsClock["tiny-usi"],
    measured: { least: 3.9, most: 7, why: written },
    mouse: "answers-late",
  },
  {
    style: "usart-ring-cpp",
    title: "an answer has 7 ms, then the byte is sent again",
    edits: [
      {
        file: "mouse.cpp",
        find: "!reply(came, replyTimeout)) {\n      return false;",
        put: "!reply(came, 7)) {\n      continue;",
      },
    ],
    rule: "ps2/reply-timeout-short",
    line: pullsClock["usart-ring-cpp"],
    measured: { least: 6.9, most: 9.5, why: written },
    mouse: "answers-late",
  },
  {
    style: "remote-polling-c",
    title: "the mouse has 4 ms to begin clocking",
    edits: [{ file: "mouse.c", find: "#define START_MS 16", put: "#define START_MS 4" }],
    rule: "ps2/reply-timeout-short",
    line: pullsClock["remote-polling-c"],
    measured: { least: 3.9, most: 6, why: written },
    mouse: "answers-late",
  },
  {
    style: "usart-ring-cpp",
    title: "the mouse has 5 ms to begin clocking",
    edits: [{ file: "port.cpp", find: "sendTimeout = 18;", put: "sendTimeout = 5;" }],
    rule: "ps2/reply-timeout-short",
    line: pullsClock["usart-ring-cpp"],
    measured: { least: 4.9, most: 7, why: written },
    mouse: "answers-late",
  },
  {
    style: "clock-interrupt-c",
    title: "the mouse has 6 ms to begin clocking",
    edits: [{ file: "mouse.c", find: "#define SEND_MS 20", put: "#define SEND_MS 6" }],
    rule: "ps2/reply-timeout-short",
    line: pullsClock["clock-interrupt-c"],
    measured: { least: 5.9, most: 8, why: written },
    mouse: "answers-late",
  },
];

/** Loops that a mouse which never clocks, as it took the port for another bus, never lets go. */
export const endlessWaits: readonly PlantedFault[] = [
  {
    style: "class-sketch",
    title: "a clock edge is waited for without an end",
    edits: [
      {
        file: "Ps2Wires.cpp",
        find: "  for (unsigned int looks = 0; looks < PATIENCE; looks++) {\n    if (clock.isHigh() == high) {\n      return true;\n    }\n  }\n  return false;",
        put: "  while (clock.isHigh() != high) {\n  }\n  return true;",
      },
    ],
    rule: "ps2/wait-forever",
    line: [{ file: "Ps2Wires.cpp", text: "while (clock.isHigh() != high) {" }, readsBits["class-sketch"]],
    mouse: "usb-or-ps2",
  },
  {
    style: "usart-ring-cpp",
    title: "a clock edge is waited for without an end",
    edits: [
      {
        file: "port.cpp",
        find: "    if (deadline.isOver()) {\n      return false;\n    }\n",
        put: "",
      },
    ],
    rule: "ps2/wait-forever",
    line: [{ file: "port.cpp", text: "while (Clock::isHigh() != high) {" }, readsBits["usart-ring-cpp"]],
    mouse: "usb-or-ps2",
  },
  {
    style: "tiny-usi",
    title: "a clock edge is waited for without an end",
    edits: [
      {
        file: "sender.c",
        find: "        if ((uint16_t)(line_ticks() - began) > SEND_TICKS) {\n            return false;\n        }\n",
        put: "",
      },
    ],
    rule: "ps2/wait-forever",
    line: { file: "sender.c", text: "while (!(PINB & _BV(CLOCK)) == high) {" },
    mouse: "usb-or-ps2",
  },
  {
    style: "remote-polling-c",
    title: "the first clock is waited for without an end",
    edits: [
      {
        file: "mouse.c",
        find: "        if (elapsed_ms() > patience_ms) {\n            return false;\n        }\n",
        put: "",
      },
    ],
    rule: "ps2/wait-forever",
    line: { file: "mouse.c", text: "while (PIND & _BV(CLOCK_PIN)) {" },
    foundBy: "check",
    mouse: "usb-or-ps2",
  },
  {
    style: "busy-wait-c",
    title: "the first clock is waited for without an end",
    edits: [
      {
        file: "ps2.c",
        find: "        if ((uint16_t)(now() - began) > TICKS(START_MS)) {\n            return CUT;\n        }\n",
        put: "",
      },
    ],
    rule: "ps2/wait-forever",
    line: { file: "ps2.c", text: "while (is_high(CLK)) {", after: "static enum result give_byte" },
    mouse: "usb-or-ps2",
  },
  {
    style: "clock-interrupt-c",
    title: "begins at once, and waits until the interrupt has sent the byte",
    edits: [
      {
        file: "ps2.c",
        find: "    EIMSK |= _BV(INT1);\n    clock_free();\n",
        put: "    EIMSK |= _BV(INT1);\n    clock_free();\n    while (sending) {\n    }\n",
      },
      {
        file: "mouse.c",
        find: "        if (is_over(RETRY_MS)) {\n",
        put: "        if (tries == 0 || is_over(RETRY_MS)) {\n",
      },
    ],
    rule: "ps2/wait-forever",
    line: { file: "ps2.c", text: "while (sending) {" },
    mouse: "usb-or-ps2",
  },
  {
    style: "busy-wait-c",
    title: "waits for the end of a byte that was never sent",
    edits: [
      {
        file: "pc.c",
        find: "        while (!(UCSR0A & 1 << UDRE0)) {",
        put: "        while (!(UCSR0A & 1 << TXC0)) {",
      },
    ],
    rule: "ps2/wait-forever",
    line: { file: "pc.c", text: "while (!(UCSR0A & 1 << TXC0)) {" },
  },
];

/** A report that was cut off in the middle is put together with what comes next. */
export const noWayBack: readonly PlantedFault[] = [
  {
    style: "clock-interrupt-c",
    title: "a rest never ends a report",
    edits: [{ file: "mouse.c", find: "#define GAP_MS 15", put: "#define GAP_MS 60000" }],
    rule: "ps2/packet-resync",
    line: collectsReport["clock-interrupt-c"],
    mouse: "restarts-itself",
    stroke: "fast-diagonals",
  },
  {
    style: "busy-wait-c",
    title: "a rest of five seconds ends a report",
    edits: [{ file: "main.c", find: "#define GAP_MS 15", put: "#define GAP_MS 5000" }],
    rule: "ps2/packet-resync",
    line: collectsReport["busy-wait-c"],
    mouse: "restarts-itself",
    stroke: "fast-diagonals",
  },
  {
    style: "class-sketch",
    title: "a rest of five seconds ends a report",
    edits: [{ file: "Ps2Mouse.h", find: "GAP_MS = 12;", put: "GAP_MS = 5000;" }],
    rule: "ps2/packet-resync",
    line: collectsReport["class-sketch"],
    mouse: "restarts-itself",
    stroke: "fast-diagonals",
  },
  {
    style: "tiny-usi",
    title: "a rest of five seconds ends a report",
    edits: [{ file: "main.c", find: "#define GAP_TICKS TICKS(12)", put: "#define GAP_TICKS TICKS(5000)" }],
    rule: "ps2/packet-resync",
    line: collectsReport["tiny-usi"],
    mouse: "restarts-itself",
    stroke: "fast-diagonals",
  },
  {
    style: "usart-ring-cpp",
    title: "a rest of five seconds ends a report",
    edits: [{ file: "mouse.h", find: "gap = 12;", put: "gap = 5000;" }],
    rule: "ps2/packet-resync",
    line: collectsReport["usart-ring-cpp"],
    mouse: "restarts-itself",
    stroke: "fast-diagonals",
  },
  {
    style: "class-sketch",
    title: "a rest of five seconds ends a report, and the mouse is pulled out in one",
    edits: [{ file: "Ps2Mouse.h", find: "GAP_MS = 12;", put: "GAP_MS = 5000;" }],
    rule: "ps2/packet-resync",
    line: collectsReport["class-sketch"],
    mouse: "unplugged-and-plugged-again",
    stroke: "circle",
  },
];

/** A byte whose parity is wrong is used as it came: its place is where its bits are read. */
export const uncheckedParity: readonly PlantedFault[] = [
  {
    style: "clock-interrupt-c",
    title: "only the stop bit is looked at",
    edits: [
      {
        file: "ps2.c",
        find: "return is_odd(frame & 0x3FE) && (frame & 0x400)",
        put: "return (frame & 0x400)",
      },
    ],
    rule: "ps2/parity-unchecked",
    line: readsBits["clock-interrupt-c"],
    mouse: "disturbed-data",
    stroke: "circle",
  },
  {
    style: "busy-wait-c",
    title: "ones are counted, and nobody asks how many",
    edits: [{ file: "ps2.c", find: "return ones & 1 ? OK : WRONG_PARITY;", put: "return OK;" }],
    rule: "ps2/parity-unchecked",
    line: readsBits["busy-wait-c"],
    mouse: "disturbed-data",
    stroke: "circle",
  },
  {
    style: "class-sketch",
    title: "only the stop bit is looked at",
    edits: [
      { file: "Ps2Wires.cpp", find: "bit && parity && count < CAPACITY", put: "bit && count < CAPACITY" },
    ],
    rule: "ps2/parity-unchecked",
    line: readsBits["class-sketch"],
    mouse: "disturbed-data",
    stroke: "circle",
  },
  {
    style: "usart-ring-cpp",
    title: "only the stop bit is looked at",
    edits: [{ file: "port.cpp", find: "if (bit && odd) {", put: "if (bit) {" }],
    rule: "ps2/parity-unchecked",
    line: readsBits["usart-ring-cpp"],
    mouse: "disturbed-data",
    stroke: "circle",
  },
  {
    style: "remote-polling-c",
    title: "ones are counted, and nobody asks how many",
    edits: [{ file: "mouse.c", find: "return rise() && parity == 1;", put: "return rise();" }],
    rule: "ps2/parity-unchecked",
    line: readsBits["remote-polling-c"],
    mouse: "disturbed-data",
    stroke: "circle",
  },
];
