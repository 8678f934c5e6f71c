import { looksAtRts, type PlantedFault, sendsReport } from "./planted-fault.ts";

/** Nothing comes when RTS comes on. */
export const noIdentification: readonly PlantedFault[] = [
  {
    style: "clock-interrupt-c",
    title: "the words have no length",
    edits: [{ file: "pc.c", find: "    out_length = 2;\n", put: "    out_length = 0;\n" }],
    rule: "serial/ident-missing",
    line: looksAtRts["clock-interrupt-c"],
  },
  {
    style: "usart-ring-cpp",
    title: "the pin-change interrupt of another port is switched on",
    edits: [{ file: "main.cpp", find: "PCICR = _BV(PCIE2);", put: "PCICR = _BV(PCIE1);" }],
    rule: "serial/ident-missing",
    line: looksAtRts["usart-ring-cpp"],
  },
  {
    style: "class-sketch",
    title: "RTS makes it forget, and no more",
    edits: [{ file: "SerialMouse.cpp", find: "    introduce(port);\n", put: "" }],
    rule: "serial/ident-missing",
    line: looksAtRts["class-sketch"],
  },
  {
    style: "tiny-usi",
    title: "RTS makes it forget, and no more",
    edits: [{ file: "main.c", find: "        line_put('M');\n", put: "" }],
    rule: "serial/ident-missing",
    line: looksAtRts["tiny-usi"],
  },
  {
    style: "remote-polling-c",
    title: "RTS makes it forget, and no more",
    edits: [{ file: "main.c", find: "    serial_byte('M');\n    serial_byte('3');\n", put: "" }],
    rule: "serial/ident-missing",
    line: looksAtRts["remote-polling-c"],
  },
  {
    style: "clock-interrupt-c",
    title: "the pin-change interrupt is never switched on",
    edits: [{ file: "pc.c", find: "    PCICR = _BV(PCIE0);\n", put: "" }],
    rule: "serial/ident-missing",
    line: looksAtRts["clock-interrupt-c"],
  },
];

const aByte = "the delay that is written, and 7.5 ms until the byte is there";

/** PCs wait 200 ms for the first character. */
export const lateIdentification: readonly PlantedFault[] = [
  {
    style: "clock-interrupt-c",
    title: "230 ms of rest before the words",
    edits: [
      {
        file: "pc.c",
        find: "    out[0] = 'M';\n",
        put: "    __builtin_avr_delay_cycles(230UL * 16000);\n    out[0] = 'M';\n",
      },
    ],
    rule: "serial/ident-late",
    line: sendsReport["clock-interrupt-c"],
    measured: { least: 236, most: 240, why: aByte },
  },
  {
    style: "class-sketch",
    title: "220 ms of rest before the word",
    edits: [
      {
        file: "SerialMouse.cpp",
        find: "    introduce(port);\n",
        put: "    delay(220);\n    introduce(port);\n",
      },
    ],
    rule: "serial/ident-late",
    line: { file: "SerialMouse.h", text: "port.write('M');" },
    measured: { least: 226, most: 230, why: aByte },
  },
  {
    style: "tiny-usi",
    title: "210 ms of rest before the word",
    edits: [
      {
        file: "main.c",
        find: "        line_put('M');\n",
        put: "        __builtin_avr_delay_cycles(210UL * 8000);\n        line_put('M');\n",
      },
    ],
    rule: "serial/ident-late",
    line: sendsReport["tiny-usi"],
    measured: { least: 216, most: 222, why: `${aByte}; the timer's handler takes some of the time` },
  },
  {
    style: "usart-ring-cpp",
    title: "250 ms of rest before the words",
    edits: [
      {
        file: "main.cpp",
        find: "  uart::clear();\n",
        put: "  __builtin_avr_delay_cycles(250UL * 16000);\n  uart::clear();\n",
      },
    ],
    rule: "serial/ident-late",
    line: sendsReport["usart-ring-cpp"],
    measured: { least: 256, most: 261, why: aByte },
  },
  {
    style: "remote-polling-c",
    title: "240 ms of rest before the words",
    edits: [
      {
        file: "main.c",
        find: "    serial_byte('M');\n",
        put: "    __builtin_avr_delay_cycles(240UL * 8000);\n    serial_byte('M');\n",
      },
    ],
    rule: "serial/ident-late",
    line: sendsReport["remote-polling-c"],
    measured: { least: 246, most: 300, why: `${aByte}; RTS is looked at once in a question to the mouse` },
  },
  {
    style: "remote-polling-c",
    title: "220 ms of rest between the words",
    edits: [
      {
        file: "main.c",
        find: "    serial_byte('3');\n",
        put: "    __builtin_avr_delay_cycles(220UL * 8000);\n    serial_byte('3');\n",
      },
    ],
    rule: "serial/ident-late",
    line: sendsReport["remote-polling-c"],
    measured: { least: 227, most: 229, why: "the delay that is written, and 7.5 ms for the byte" },
    pc: "patient",
  },
];

/** Other characters than those of PROTOCOL.TXT (a DOS mouse driver), identification. */
export const wrongIdentification: readonly PlantedFault[] = [
  {
    style: "clock-interrupt-c",
    title: "N instead of M",
    edits: [{ file: "pc.c", find: "out[0] = 'M';", put: "out[0] = 'N';" }],
    rule: "serial/ident-wrong",
    line: sendsReport["clock-interrupt-c"],
    measured: { least: 0x4e, most: 0x4e, why: "ISO/IEC 646: N" },
  },
  {
    style: "clock-interrupt-c",
    title: "2 behind M",
    edits: [{ file: "pc.c", find: "out[1] = '3';", put: "out[1] = '2';" }],
    rule: "serial/ident-wrong",
    line: sendsReport["clock-interrupt-c"],
    measured: { least: 0x32, most: 0x32, why: "ISO/IEC 646: 2" },
  },
  {
    style: "class-sketch",
    title: "a small m",
    edits: [{ file: "SerialMouse.h", find: "port.write('M');", put: "port.write('m');" }],
    rule: "serial/ident-wrong",
    line: { file: "SerialMouse.h", text: "port.write('m');" },
    measured: { least: 0x6d, most: 0x6d, why: "ISO/IEC 646: m" },
  },
  {
    style: "tiny-usi",
    title: "H instead of M",
    edits: [{ file: "main.c", find: "line_put('M');", put: "line_put('H');" }],
    rule: "serial/ident-wrong",
    line: sendsReport["tiny-usi"],
    measured: { least: 0x48, most: 0x48, why: "ISO/IEC 646: H" },
  },
  {
    style: "usart-ring-cpp",
    title: "3 behind M, and reports of a wheel",
    edits: [{ file: "main.cpp", find: "{'M', 'Z', '@', 0, 0, 0}", put: "{'M', '3', '@', 0, 0, 0}" }],
    rule: "serial/ident-wrong",
    line: sendsReport["usart-ring-cpp"],
    measured: { least: 0x33, most: 0x33, why: "ISO/IEC 646: 3" },
  },
  {
    style: "remote-polling-c",
    title: "Z behind M, and reports of three buttons",
    edits: [{ file: "main.c", find: "serial_byte('3');", put: "serial_byte('Z');" }],
    rule: "serial/ident-wrong",
    line: sendsReport["remote-polling-c"],
    measured: { least: 0x5a, most: 0x5a, why: "ISO/IEC 646: Z" },
  },
  {
    style: "busy-wait-c",
    title: "M, and reports of five bytes",
    edits: [{ file: "pc.c", find: "UDR0 = 'H';", put: "UDR0 = 'M';" }],
    rule: "serial/ident-wrong",
    line: { file: "pc.c", text: "UDR0 = 'M';" },
    measured: { least: 0x4d, most: 0x4d, why: "ISO/IEC 646: M" },
  },
];

/** It says who it is, but not each time that RTS comes on. */
export const ignoredLines: readonly PlantedFault[] = [
  {
    style: "clock-interrupt-c",
    title: "once only",
    edits: [
      {
        file: "pc.c",
        find: "    if (asked) {\n        asked = false;\n",
        put: "    static bool introduced;\n\n    if (asked && !introduced) {\n        introduced = true;\n",
      },
    ],
    rule: "serial/control-line-ignored",
    line: looksAtRts["clock-interrupt-c"],
    pc: "second-reset",
    stroke: "circle",
  },
  {
    style: "class-sketch",
    title: "at power-up, whatever RTS does",
    edits: [
      {
        file: "SerialMouse.cpp",
        find: "  if (on && !wasOn) {\n",
        put: "  static bool introduced = false;\n  if (!introduced) {\n    introduced = true;\n",
      },
    ],
    rule: "serial/control-line-ignored",
    line: looksAtRts["class-sketch"],
  },
  {
    style: "tiny-usi",
    title: "at power-up, whatever RTS does",
    edits: [
      {
        file: "main.c",
        find: "    if (on && !was_on) {\n",
        put: "    static bool introduced;\n\n    if (!introduced) {\n        introduced = true;\n",
      },
    ],
    rule: "serial/control-line-ignored",
    line: looksAtRts["tiny-usi"],
  },
  {
    style: "usart-ring-cpp",
    title: "at power-up, whatever RTS does",
    edits: [{ file: "main.cpp", find: "  PCICR = _BV(PCIE2);\n", put: "  wasAsked = true;\n" }],
    rule: "serial/control-line-ignored",
    line: looksAtRts["usart-ring-cpp"],
  },
  {
    style: "remote-polling-c",
    title: "once only",
    edits: [
      {
        file: "serial.c",
        find: "    was_on = is_on;\n",
        put: "    was_on = was_on || is_on;\n",
      },
    ],
    rule: "serial/control-line-ignored",
    line: looksAtRts["remote-polling-c"],
    pc: "second-reset",
    stroke: "circle",
  },
  {
    style: "usart-ring-cpp",
    title: "once only",
    edits: [
      {
        file: "main.cpp",
        find: "    wasAsked = false;\n    introduce();\n",
        put: "    wasAsked = false;\n    PCICR = 0;\n    introduce();\n",
      },
    ],
    rule: "serial/control-line-ignored",
    line: looksAtRts["usart-ring-cpp"],
    pc: "second-reset",
    stroke: "circle",
  },
];
