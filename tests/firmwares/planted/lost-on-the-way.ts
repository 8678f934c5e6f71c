import { type PlantedFault, pullsClock, sendsReport } from "./planted-fault.ts";

/** While a byte goes to the PC, the mouse is not heard. */
export const deafWhileSending: readonly PlantedFault[] = [
  {
    style: "busy-wait-c",
    title: "a report is sent to its end while the clock is held low",
    edits: [
      {
        file: "pc.c",
        find: "    if (left_to_send > 0) {\n        UDR0",
        put: "    while (left_to_send > 0) {\n        while (!(UCSR0A & 1 << UDRE0)) {\n        }\n        UDR0",
      },
    ],
    rule: "serial/blocks-receive",
    line: pullsClock["busy-wait-c"],
    stroke: "flick",
  },
  {
    style: "usart-ring-cpp",
    title: "a byte is sent with interrupts off",
    edits: [
      {
        file: "uart.cpp",
        find: "  while (toSend.isFull()) {\n  }\n  toSend.put(byte);\n  UCSR1B |= _BV(UDRIE1);",
        put: "  cli();\n  while (!(UCSR1A & _BV(UDRE1))) {\n  }\n  UDR1 = byte;\n  sei();",
      },
    ],
    rule: "serial/blocks-receive",
    line: { file: "uart.cpp", text: "while (!(UCSR1A & _BV(UDRE1))) {" },
    stroke: "circle",
  },
  {
    style: "clock-interrupt-c",
    title: "a report is sent with interrupts off",
    edits: [
      {
        file: "pc.c",
        find: "    if (out_at < out_length) {\n        UDR0 = out[out_at++];\n    }",
        put: "    cli();\n    while (out_at < out_length) {\n        while (!(UCSR0A & _BV(UDRE0))) {\n        }\n        UDR0 = out[out_at++];\n    }\n    sei();",
      },
      { file: "mouse.c", find: "SET_SAMPLE_RATE, 40,", put: "SET_SAMPLE_RATE, 100," },
    ],
    rule: "serial/blocks-receive",
    line: { file: "pc.c", text: "while (!(UCSR0A & _BV(UDRE0))) {" },
    stroke: "circle",
  },
  {
    style: "usart-ring-cpp",
    title: "the handler of the USART waits until the byte is in the line",
    edits: [
      {
        file: "uart.cpp",
        find: "  UDR1 = toSend.take();\n",
        put: "  UDR1 = toSend.take();\n  while (!(UCSR1A & _BV(UDRE1))) {\n  }\n",
      },
    ],
    rule: "serial/blocks-receive",
    line: { file: "uart.cpp", text: "while (!(UCSR1A & _BV(UDRE1))) {" },
    stroke: "circle",
  },
  {
    style: "class-sketch",
    title: "a report is sent with interrupts off",
    edits: [
      {
        file: "SerialMouse.cpp",
        find: "    port.write(report, bytes);\n",
        put: "    noInterrupts();\n    port.write(report, bytes);\n    port.flush();\n    interrupts();\n",
      },
    ],
    rule: "serial/blocks-receive",
    line: { file: "SerialMouse.cpp", text: "port.flush();" },
    stroke: "circle",
  },
];

/** Counts that came in and never go out. */
export const lostCounts: readonly PlantedFault[] = [
  {
    style: "clock-interrupt-c",
    title: "motion that waits is overwritten",
    edits: [{ file: "pc.c", find: "last->dx += motion->dx;", put: "last->dx = motion->dx;" }],
    rule: "report/counts-lost",
    line: sendsReport["clock-interrupt-c"],
    stroke: "flick",
  },
  {
    style: "class-sketch",
    title: "what does not fit into a report is forgotten",
    edits: [{ file: "SerialMouse.cpp", find: "next.right -= right;", put: "next.right = 0;" }],
    rule: "report/counts-lost",
    line: sendsReport["class-sketch"],
    stroke: "flick",
  },
  {
    style: "tiny-usi",
    title: "what does not fit into a report is forgotten, upwards",
    edits: [{ file: "main.c", find: "to_top -= dy;", put: "to_top = 0;" }],
    rule: "report/counts-lost",
    line: sendsReport["tiny-usi"],
    stroke: "flick",
  },
  {
    style: "usart-ring-cpp",
    title: "a leg is dropped after one report",
    edits: [{ file: "journey.cpp", find: "  if (first.isDone()) {", put: "  if (true) {" }],
    rule: "report/counts-lost",
    line: sendsReport["usart-ring-cpp"],
    stroke: "flick",
  },
  {
    style: "remote-polling-c",
    title: "what does not fit into a report is forgotten",
    edits: [{ file: "main.c", find: "state.x -= x;", put: "state.x = 0;" }],
    rule: "report/counts-lost",
    line: sendsReport["remote-polling-c"],
    stroke: "flick",
  },
  {
    style: "clock-interrupt-c",
    title: "motion towards the user has no sign",
    edits: [{ file: "mouse.c", find: "    if (p[0] & 0x20) {\n        m->dy -= 256;\n    }\n", put: "" }],
    rule: "report/counts-lost",
    line: sendsReport["clock-interrupt-c"],
    stroke: "circle",
  },
];

/** A variable that an interrupt changes is read or changed in pieces with interrupts on. */
export const tornVariables: readonly PlantedFault[] = [
  {
    style: "clock-interrupt-c",
    title: "the time is read with interrupts on",
    edits: [{ file: "ticks.c", find: "    cli();\n    now = count;", put: "    now = count;" }],
    rule: "board/shared-not-atomic",
    line: { file: "ticks.c", text: "now = count;" },
    stroke: "circle",
  },
  {
    style: "usart-ring-cpp",
    title: "the time is read with interrupts on",
    edits: [
      {
        file: "ticks.cpp",
        find: "  ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {\n    value = milliseconds;\n  }\n",
        put: "  value = milliseconds;\n",
      },
    ],
    rule: "board/shared-not-atomic",
    line: { file: "ticks.cpp", text: "value = milliseconds;" },
    stroke: "circle",
  },
  {
    style: "tiny-usi",
    title: "the time is read with interrupts on",
    edits: [
      {
        file: "line.c",
        find: "    ATOMIC_BLOCK(ATOMIC_RESTORESTATE)\n    {\n        now = ticks;\n    }\n",
        put: "    now = ticks;\n",
      },
    ],
    rule: "board/shared-not-atomic",
    line: { file: "line.c", text: "now = ticks;" },
    stroke: "circle",
  },
  {
    style: "class-sketch",
    title: "the moment at which a byte began is read with interrupts on",
    edits: [
      {
        file: "Ps2Wires.h",
        find: "bool available() const { return count > 0; }",
        put: "bool available() const { return count > 0 && micros() - began > 20; }",
      },
    ],
    rule: "board/shared-not-atomic",
    line: { file: "Ps2Wires.h", text: "micros() - began > 20" },
    foundBy: "check",
  },
];
