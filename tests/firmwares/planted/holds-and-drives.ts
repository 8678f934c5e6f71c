import { type PlantedFault, pullsClock } from "./planted-fault.ts";

const tenMoreUs = "the delay that is written, and a few microseconds for the writes around it";

/** The clock is held for less than 100 us before a request: The PS/2 Mouse/Keyboard Protocol, Host-to-Device. */
export const shortHolds: readonly PlantedFault[] = [
  {
    style: "clock-interrupt-c",
    title: "the hold of an older keyboard text, 60 us",
    edits: [{ file: "ps2.c", find: "#define HOLD_US 120", put: "#define HOLD_US 60" }],
    rule: "ps2/request-hold-short",
    line: pullsClock["clock-interrupt-c"],
    measured: { least: 60, most: 66, why: tenMoreUs },
  },
  {
    style: "busy-wait-c",
    title: "a delay that was right for another crystal",
    edits: [{ file: "ps2.c", find: "_delay_us(110);", put: "_delay_us(70);" }],
    rule: "ps2/request-hold-short",
    line: pullsClock["busy-wait-c"],
    measured: { least: 70, most: 78, why: tenMoreUs },
  },
  {
    style: "class-sketch",
    title: "80 us",
    edits: [{ file: "Ps2Wires.cpp", find: "delayMicroseconds(150)", put: "delayMicroseconds(80)" }],
    rule: "ps2/request-hold-short",
    line: pullsClock["class-sketch"],
    measured: {
      least: 80,
      most: 96,
      why: "the delay that is written, and 13 us in the code that avr-g++ makes of the calls around it",
    },
  },
  {
    style: "tiny-usi",
    title: "so short that no mouse notices, and nothing comes of it",
    edits: [{ file: "sender.c", find: "_delay_us(150)", put: "_delay_us(15)" }],
    rule: "ps2/request-hold-short",
    line: pullsClock["tiny-usi"],
    measured: { least: 15, most: 25, why: tenMoreUs },
  },
  {
    style: "usart-ring-cpp",
    title: "nearly long enough",
    edits: [{ file: "port.cpp", find: "_delay_us(125)", put: "_delay_us(94)" }],
    rule: "ps2/request-hold-short",
    line: pullsClock["usart-ring-cpp"],
    measured: { least: 94, most: 99.9, why: tenMoreUs },
    mouse: "strict-about-requests",
  },
  {
    style: "remote-polling-c",
    title: "no delay at all but the time of the writes",
    edits: [
      {
        file: "mouse.c",
        find: "    _delay_us(120);\n    data_down();",
        put: "    _delay_us(85);\n    data_down();",
      },
    ],
    rule: "ps2/request-hold-short",
    line: pullsClock["remote-polling-c"],
    measured: { least: 85, most: 92, why: tenMoreUs },
  },
];

/** A line is driven high: both are open collector. The PS/2 Mouse/Keyboard Protocol, Electrical Interface. */
export const drivenHigh: readonly PlantedFault[] = [
  {
    style: "clock-interrupt-c",
    title: "data is an output for ones, too",
    edits: [
      {
        file: "ps2.c",
        find: "    DDRD &= ~_BV(DATA);\n    PORTD |= _BV(DATA);",
        put: "    DDRD |= _BV(DATA);\n    PORTD |= _BV(DATA);",
      },
    ],
    rule: "ps2/line-driven-high",
    line: { file: "ps2.c", text: "PORTD |= _BV(DATA);", after: "void data_free" },
  },
  {
    style: "busy-wait-c",
    title: "a one is written to the port",
    edits: [
      {
        file: "ps2.c",
        find: "        let_go(DAT);\n    } else {\n        pull(DAT);",
        put: "        PORTC |= 1 << DAT;\n    } else {\n        PORTC &= ~(1 << DAT);\n        pull(DAT);",
      },
    ],
    rule: "ps2/line-driven-high",
    line: { file: "ps2.c", text: "PORTC |= 1 << DAT;" },
  },
  {
    style: "class-sketch",
    title: "letting go makes an output",
    edits: [
      {
        file: "OpenCollector.h",
        find: "    *mode &= ~mask;\n    *output |= mask;",
        put: "    *output |= mask;\n    *mode |= mask;",
      },
    ],
    rule: "ps2/line-driven-high",
    line: { file: "OpenCollector.h", text: "*mode |= mask;", after: "void release" },
  },
  {
    style: "tiny-usi",
    title: "the pull-up is switched on while the pin is still an output",
    edits: [
      {
        file: "sender.c",
        find: "    DDRB &= ~_BV(pin);",
        put: "    PORTB |= _BV(pin);\n    DDRB &= ~_BV(pin);\n    PORTB &= ~_BV(pin);",
      },
    ],
    rule: "ps2/line-driven-high",
    line: { file: "sender.c", text: "PORTB |= _BV(pin);" },
  },
  {
    style: "usart-ring-cpp",
    title: "both lines are driven high",
    edits: [
      {
        file: "port.cpp",
        find: "    DDRE &= ~_BV(Bit);\n    PORTE |= _BV(Bit);",
        put: "    DDRE |= _BV(Bit);\n    PORTE |= _BV(Bit);",
      },
    ],
    rule: "ps2/line-driven-high",
    line: { file: "port.cpp", text: "PORTE |= _BV(Bit);" },
  },
  {
    style: "remote-polling-c",
    title: "data stays an output",
    edits: [{ file: "mouse.c", find: "    DDRD &= ~_BV(DATA_PIN);\n", put: "" }],
    rule: "ps2/line-driven-high",
    line: { file: "mouse.c", text: "PORTD |= _BV(DATA_PIN);" },
  },
];
