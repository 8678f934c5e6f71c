import { describe, expect, test } from "vitest";
import type { ReceivedByte } from "../../../../src-core/bench/pcs/uart/received-byte.ts";
import { UartReceiver } from "../../../../src-core/bench/pcs/uart/uart-receiver.ts";
import { EventQueue } from "../../../../src-core/bench/time/event-queue.ts";
import { DrivenWire } from "../../../../src-core/bench/wires/driven-wire.ts";
import { drive, eightTwo, type Sending, send, sevenOne } from "./sender.ts";

const MS = 1e9;

function receiver(dataBits: 7 | 8 = 7) {
  const queue = new EventQueue();
  const line = new DrivenWire("rxd", queue, 1);
  const bytes: ReceivedByte[] = [];
  const uart = new UartReceiver(queue, line, { baud: 1200, dataBits }, (byte) => bytes.push(byte));
  return { queue, line, bytes, uart };
}

function received(sent: readonly number[], sending: Sending, from = MS) {
  const { queue, line, bytes } = receiver(sending.dataBits === 8 ? 8 : 7);
  const end = send(queue, line, from, sent, sending);
  queue.advanceTo(end + 20 * MS);
  return bytes;
}

/** What came in without a fault. */
const values = (bytes: readonly ReceivedByte[]) =>
  bytes.map(({ value, fault }) => (fault === undefined ? value : fault));

const everySeven = Array.from({ length: 128 }, (_, value) => value);
const everyEight = Array.from({ length: 256 }, (_, value) => value);

describe("bytes at the right rate", () => {
  test("all of seven bits, back to back", () => {
    expect(values(received(everySeven, sevenOne))).toEqual(everySeven);
  });

  test("all of eight bits, with two stop bits", () => {
    expect(values(received(everyEight, eightTwo))).toEqual(everyEight);
  });

  // Plug and Play External COM Device Specification, 2.2: eight data bits with the top bit set are read as seven.
  test("eight bits with the top one set are read by a receiver for seven", () => {
    const { queue, line, bytes } = receiver();
    const end = send(queue, line, MS, [0x4d | 0x80, 0x33 | 0x80], { ...sevenOne, dataBits: 8 });
    queue.advanceTo(end + MS);
    expect(values(bytes)).toEqual([0x4d, 0x33]);
  });

  test("a byte is there in its stop bit, not before and not after", () => {
    const [byte] = received([0x4d], sevenOne, 100 * MS);
    // Start and seven data bits take 8 bit times of 833.3 us, mouse(4); the stop bit is the ninth.
    expect(byte?.time).toBeGreaterThan(100 * MS + 6.6667 * MS);
    expect(byte?.time).toBeLessThan(100 * MS + 7.5 * MS);
    // The first of sixteen samples per bit, 52 us apart.
    expect(byte?.from).toBeGreaterThanOrEqual(100 * MS);
    expect(byte?.from).toBeLessThan(100 * MS + 0.053 * MS);
  });
});

// ATmega328P datasheet 7810C, Table 19-2 (16 samples per bit), typed from it: bits of data and parity, slowest and
// fastest sender in per cent.
describe.each([
  { dataBits: 7, slow: 94.81, fast: 105.11 },
  { dataBits: 8, slow: 95.36, fast: 104.58 },
] as const)("a sender at the edges of the tolerance, $dataBits bits", ({ dataBits, slow, fast }) => {
  const bytes = dataBits === 7 ? everySeven : everyEight;
  const sending = (percent: number): Sending => ({ bit: 1e14 / (1200 * percent), dataBits, stopBits: 1 });
  // A sixteenth of a bit, in steps: where the start bit falls between two samples.
  const phases = Array.from({ length: 20 }, (_, index) => MS + index * 2_604_167);

  test.each([slow + 0.01, fast - 0.01])("%s %% is read, wherever it falls between samples", (percent) => {
    for (const phase of phases) expect(values(received(bytes, sending(percent), phase))).toEqual(bytes);
  });

  // Two of the three votes decide, so that the slow side bears half a per cent more than the table, which wants all three.
  test.each([slow - 1, fast + 0.3])("%s %% is misread somewhere", (percent) => {
    expect(
      phases.some((phase) => String(values(received(bytes, sending(percent), phase))) !== String(bytes)),
    ).toBe(true);
  });
});

describe("what is no byte", () => {
  test("a pulse of a third of a bit is no start bit", () => {
    const { queue, line, bytes, uart } = receiver();
    drive(queue, line, MS, 0);
    drive(queue, line, MS + 0.277 * MS, 1);
    send(queue, line, 5 * MS, [0x4d]);
    queue.advanceTo(30 * MS);
    expect(values(bytes)).toEqual([0x4d]);
    expect(uart.falseStarts).toBe(1);
  });

  test("a pulse between two samples is not seen", () => {
    const { queue, line, bytes, uart } = receiver();
    // Samples are 52.083 us apart: one at 1.0417 ms, one at 1.0938 ms.
    drive(queue, line, 1.05 * MS, 0);
    drive(queue, line, 1.08 * MS, 1);
    queue.advanceTo(30 * MS);
    expect([bytes.length, uart.falseStarts]).toEqual([0, 0]);
  });

  test("noise of one sample inside a bit is outvoted", () => {
    const { queue, line, bytes } = receiver();
    // 7F: the line is at mark behind the start bit. The middle of bit 2 is 2.9 ms behind its start.
    send(queue, line, 0, [0x7f]);
    const middle = 3.5 * (1e12 / 1200);
    drive(queue, line, Math.round(middle - 0.02 * MS), 0);
    drive(queue, line, Math.round(middle + 0.02 * MS), 1);
    queue.advanceTo(30 * MS);
    expect(values(bytes)).toEqual([0x7f]);
  });

  test("space where the stop bit should be is a framing error; the next byte is read", () => {
    const { queue, line, bytes } = receiver();
    // Eight data bits with the top one clear: the receiver for seven takes it for the stop bit.
    const end = send(queue, line, MS, [0x4d], { ...sevenOne, dataBits: 8 });
    send(queue, line, end + MS, [0x33]);
    queue.advanceTo(60 * MS);
    expect(values(bytes)).toEqual(["framing", 0x33]);
  });

  test("a break is told once, however long it is", () => {
    const { queue, line, bytes } = receiver();
    drive(queue, line, MS, 0);
    drive(queue, line, 200 * MS, 1);
    send(queue, line, 210 * MS, [0x33]);
    queue.advanceTo(300 * MS);
    expect(values(bytes)).toEqual(["break", 0x33]);
  });

  test("a line that is at space from the start gives nothing before its first edge", () => {
    const queue = new EventQueue();
    const line = new DrivenWire("rxd", queue, 0);
    const bytes: ReceivedByte[] = [];
    new UartReceiver(queue, line, { baud: 1200, dataBits: 7 }, (byte) => bytes.push(byte));
    queue.advanceTo(100 * MS);
    expect(bytes).toEqual([]);
  });
});
