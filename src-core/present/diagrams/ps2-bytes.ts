import { bytesText } from "../../figures.ts";
import { deviceToHostFrame, type FrameBit, hostToDeviceFrame } from "../../model/frames.ts";
import { figureOf } from "./figure-of.ts";
import type { Driver, Step, Stretch, WaveDiagram } from "./wave.ts";

/** A byte from the mouse. A unit of time is one clock; the clock falls at 1.25, 2.25, ... */
export function byteFromMouse(byte: number): WaveDiagram {
  const frame = deviceToHostFrame(byte);
  const first = 1.25;
  const last = first + frame.length - 1;
  const length = last + 1.75;
  return {
    title: `A byte from the mouse: ${bytesText([byte])}`,
    description:
      "The mouse makes eleven clocks. It changes data while the clock is high, and the host reads data while the clock is low: " +
      "a start bit of 0, eight data bits from the lowest, a parity bit that makes the ones odd in number, a stop bit of 1.",
    length,
    lanes: [
      {
        name: "clock",
        steps: clocks(frame.length, first, []),
        cells: [],
        measures: [
          { from: first + 1, to: first + 2, text: `clock period: ${figureOf("ps2.clock-period")}` },
          { from: first + 1, to: first + 1.5, text: `clock low: ${figureOf("ps2.clock-low")}` },
        ],
      },
      {
        name: "data",
        steps: [
          idle(0),
          ...frame.map(({ level }, index) => held(first + index - 0.25, level, "mouse")),
          idle(last + 0.75),
        ],
        cells: frame.map((bit, index): Stretch => {
          return { from: first + index - 0.25, to: first + index + 0.75, text: bitName(bit) };
        }),
        measures: [
          {
            from: first + 2.75,
            to: first + 3,
            text: `data set before the clock falls: ${figureOf("ps2.data-setup")}`,
          },
          {
            from: first + 4.5,
            to: first + 4.75,
            text: `data kept after the clock rises: ${figureOf("ps2.data-hold")}`,
          },
        ],
      },
    ],
  };
}

/** A byte to the mouse: the host's hold and request, then clocks of the mouse. The clock falls at 3.5, 4.5, ... */
export function byteToMouse(byte: number): WaveDiagram {
  const frame = hostToDeviceFrame(byte);
  const sent = frame.filter(({ role, driver }) => driver === "host" && role !== "start");
  const hold = { from: 0.5, to: 2 };
  const request = 1.75;
  const first = 3.5;
  const clockCount = sent.length + 1;
  const last = first + clockCount - 1;
  const acknowledge = { from: last - 0.25, to: last + 0.75 };
  return {
    title: `A byte to the mouse: ${bytesText([byte])}`,
    description:
      "The host holds the clock low, pulls data low and lets the clock go. The mouse then makes eleven clocks. The host changes " +
      "data while the clock is low, and the mouse reads data while the clock is high; at the last clock the mouse pulls data low " +
      "to acknowledge.",
    length: last + 2,
    lanes: [
      {
        name: "clock",
        steps: clocks(clockCount, first, [{ at: hold.from, level: 0, driver: "host" }, idle(hold.to)]),
        cells: [],
        measures: [
          { ...hold, text: `clock held: ${figureOf("ps2.request-hold")}` },
          {
            from: hold.to,
            to: first,
            text: `the host waits for the first clock: ${figureOf("ps2.start-timeout")}`,
          },
        ],
      },
      {
        name: "data",
        steps: [
          idle(0),
          { at: request, level: 0, driver: "host" },
          ...sent.map(({ level }, index) => held(first + index + 0.1, level, "host")),
          { at: acknowledge.from, level: 0, driver: "mouse" },
          idle(acknowledge.to),
        ],
        cells: [
          { from: request, to: first + 0.1, text: "start" },
          ...sent.map((bit, index): Stretch => {
            const to = index === sent.length - 1 ? acknowledge.from : first + index + 1.1;
            return { from: first + index + 0.1, to, text: bitName(bit) };
          }),
          { ...acknowledge, text: "ack" },
        ],
        measures: [
          {
            from: first + 3,
            to: first + 3.1,
            text: `data changed after the clock falls: ${figureOf("ps2.data-change-delay")}`,
          },
        ],
      },
    ],
  };
}

/** The mouse's clock, low for half of each period; `before` is what the host does first. */
function clocks(count: number, first: number, before: readonly Step[]): readonly Step[] {
  return [
    idle(0),
    ...before,
    ...Array.from({ length: count }, (_, index): readonly Step[] => [
      { at: first + index, level: 0, driver: "mouse" },
      idle(first + index + 0.5),
    ]).flat(),
  ];
}

function idle(at: number): Step {
  return { at, level: 1, driver: "nobody" };
}

/** On an open collector line a 1 is let go, never driven. */
function held(at: number, level: 0 | 1, driver: Driver): Step {
  return level === 1 ? idle(at) : { at, level, driver };
}

function bitName({ role, dataBit }: FrameBit): string {
  return role === "data" ? `d${dataBit}` : role;
}
