import { bytesText } from "../../figures.ts";
import { formatLineFormat, type LineFormat } from "../../model/line-formats.ts";
import { pinLevel, polarity } from "../../model/rs232.ts";
import { figureOf } from "./figure-of.ts";
import type { Lane, Step, Stretch, WaveDiagram } from "./wave.ts";

/** Levels of the bits of a byte on the line: start, data from the lowest, stop bits. Without parity. */
function bitsOf(
  byte: number,
  { dataBits, stopBits }: LineFormat,
): readonly { name: string; mark: boolean }[] {
  return [
    { name: "start", mark: false },
    ...Array.from({ length: dataBits }, (_, bit) => ({ name: `d${bit}`, mark: ((byte >> bit) & 1) === 1 })),
    ...Array.from({ length: stopBits }, () => ({ name: "stop", mark: true })),
  ];
}

/** One byte at the chip's pin and at the connector. A unit of time is one bit. */
export function byteToPc(byte: number, format: LineFormat): WaveDiagram {
  const bits = bitsOf(byte, format);
  const begin = 1;
  const length = begin + bits.length + 1.5;
  const atLine = (line: "pin" | "connector"): readonly Step[] => {
    const levelOf = (mark: boolean): 0 | 1 => {
      const state = mark ? "mark" : "space";
      return line === "pin" ? pinLevel(state, "inverting") : polarity(state) === "positive" ? 1 : 0;
    };
    return [
      { at: 0, level: levelOf(true), driver: "adapter" },
      ...bits.map(
        ({ mark }, index): Step => ({ at: begin + index, level: levelOf(mark), driver: "adapter" }),
      ),
    ];
  };
  const cells = bits.map(
    ({ name }, index): Stretch => ({ from: begin + index, to: begin + index + 1, text: name }),
  );
  return {
    title: `${bytesText([byte])} (${String.fromCharCode(byte)}) as ${formatLineFormat(format)}`,
    description:
      "The line rests at mark. A start bit of space, the data bits from the lowest, and a stop bit of mark each last one bit time. " +
      "The level shifter turns the levels of the chip's pin over: mark is negative on the connector.",
    length,
    lanes: [
      {
        name: "pin",
        levelNames: ["mark", "space"],
        steps: atLine("pin"),
        cells,
        measures: [{ from: begin, to: begin + 1, text: `bit time: ${figureOf("serial.bit-time")}` }],
      },
      {
        name: "RXD",
        levelNames: ["space", "mark"],
        steps: atLine("connector"),
        cells: [],
        measures: [],
      },
    ],
  };
}

/** RTS comes on, and the mouse says what it is. A unit of time is as the picture needs it. */
export function identificationAfterRts(byte: number, format: LineFormat): WaveDiagram {
  const on = 3;
  const begin = 6;
  const bitWidth = 0.3;
  const bits = bitsOf(byte, format);
  const end = begin + bits.length * bitWidth;
  const rts: Lane = {
    name: "RTS",
    levelNames: ["on", "off"],
    steps: [
      { at: 0, level: 1, driver: "PC" },
      { at: 1, level: 0, driver: "PC" },
      { at: on, level: 1, driver: "PC" },
    ],
    cells: [],
    measures: [{ from: 1, to: on, text: `off: ${figureOf("serial.reset-hold")}` }],
  };
  const level = (mark: boolean): 0 | 1 => (polarity(mark ? "mark" : "space") === "positive" ? 1 : 0);
  return {
    title: "The PC asks, and the mouse says what it is",
    description:
      "The PC turns RTS off and on again. The mouse sends its identification, beginning with M, soon after RTS came on.",
    length: end + 4,
    lanes: [
      rts,
      {
        name: "RXD",
        levelNames: ["space", "mark"],
        steps: [
          { at: 0, level: level(true), driver: "adapter" },
          ...bits.map(({ mark }, index): Step => {
            return { at: begin + index * bitWidth, level: level(mark), driver: "adapter" };
          }),
        ],
        cells: [{ from: begin, to: end, text: String.fromCharCode(byte) }],
        measures: [{ from: on, to: end, text: `identification: ${figureOf("serial.ident-delay")}` }],
      },
    ],
  };
}
