import { freesClock, type PlantedFault, pullsClock, sendsReport } from "./planted-fault.ts";

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

/** A report that was cut off in the middle is put together with what comes next. */
export const noWayBack: readonly PlantedFault[] = [
  {
    style: "clock-interrupt-c",
    title: "a rest never ends a report",
    edits: [{ file: "mouse.c", find: "#define GAP_MS 15", put: "#define GAP_MS 60000" }],
    rule: "ps2/packet-resync",
    line: sendsReport["clock-interrupt-c"],
    mouse: "restarts-itself",
    stroke: "fast-diagonals",
  },
  {
    style: "busy-wait-c",
    title: "a rest of five seconds ends a report",
    edits: [{ file: "main.c", find: "#define GAP_MS 15", put: "#define GAP_MS 5000" }],
    rule: "ps2/packet-resync",
    line: sendsReport["busy-wait-c"],
    mouse: "restarts-itself",
    stroke: "fast-diagonals",
  },
  {
    style: "class-sketch",
    title: "a rest of five seconds ends a report",
    edits: [{ file: "Ps2Mouse.h", find: "GAP_MS = 12;", put: "GAP_MS = 5000;" }],
    rule: "ps2/packet-resync",
    line: sendsReport["class-sketch"],
    mouse: "restarts-itself",
    stroke: "fast-diagonals",
  },
  {
    style: "tiny-usi",
    title: "a rest of five seconds ends a report",
    edits: [{ file: "main.c", find: "#define GAP_TICKS TICKS(12)", put: "#define GAP_TICKS TICKS(5000)" }],
    rule: "ps2/packet-resync",
    line: sendsReport["tiny-usi"],
    mouse: "restarts-itself",
    stroke: "fast-diagonals",
  },
  {
    style: "usart-ring-cpp",
    title: "a rest of five seconds ends a report",
    edits: [{ file: "mouse.h", find: "gap = 12;", put: "gap = 5000;" }],
    rule: "ps2/packet-resync",
    line: sendsReport["usart-ring-cpp"],
    mouse: "restarts-itself",
    stroke: "fast-diagonals",
  },
  {
    style: "class-sketch",
    title: "a rest of five seconds ends a report, and the mouse is pulled out in one",
    edits: [{ file: "Ps2Mouse.h", find: "GAP_MS = 12;", put: "GAP_MS = 5000;" }],
    rule: "ps2/packet-resync",
    line: sendsReport["class-sketch"],
    mouse: "unplugged-and-plugged-again",
    stroke: "circle",
  },
];
