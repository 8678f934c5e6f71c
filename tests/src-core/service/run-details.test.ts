import { describe, expect, test } from "vitest";
import { codeOf } from "../../../src-core/model/commands.ts";
import type { RunDetails } from "../../../src-core/run-details.ts";
import { runOf, sampleFiles } from "./sample-run.ts";

const US = 1e6;
const files = sampleFiles("ferry-c");
const { details } = runOf(files, { stroke: "all-at-once" });

/** Level of a wire right before a moment. */
function levelBefore({ edges }: RunDetails, wire: string, time: number): number {
  return edges.findLast((edge) => edge.wire === wire && edge.time < time)?.level ?? 1;
}

/**
 * Eight data bits, first bit lowest, read from the wires alone. PS/2 (EM84502 data sheet, section B): the host reads data at the falling
 * edges of the clock, the first of which is the start bit's; a mouse reads the host's bits at the rising ones.
 */
function byteOnWires(of: RunDetails, from: number, to: number, sender: "mouse" | "host"): number {
  const level = sender === "mouse" ? 0 : 1;
  const clocks = of.edges.filter(
    ({ wire, time, level: now, by }) =>
      wire === "clock" && now === level && time >= from && time <= to && by === "mouse",
  );
  const bits = sender === "mouse" ? clocks.slice(1, 9) : clocks.slice(0, 8);
  return bits.reduce((byte, { time }, bit) => byte | (levelBefore(of, "data", time) << bit), 0);
}

/** A byte of 7N1 at 1200 baud, read in the middle of each bit: mouse(4). */
function byteOnLine(of: RunDetails, from: number): number {
  const bit = 1e12 / 1200;
  return Array.from({ length: 7 }, (_, index) => levelBefore(of, "rxd", from + (index + 1.5) * bit)).reduce(
    (byte, level, index) => byte | (level << index),
    0,
  );
}

describe("the details of a run", () => {
  test("its frames hold the bytes that the PS/2 wires show", () => {
    const { frames } = details;
    expect(frames.length).toBeGreaterThan(50);
    for (const { from, to, sender, byte, fault } of frames) {
      expect(fault).toBeUndefined();
      expect(byteOnWires(details, from, to, sender)).toBe(byte);
    }
  });

  test("its serial bytes are those on the line, and all of its reports consist of them", () => {
    expect(details.serialBytes.length).toBeGreaterThan(20);
    for (const { from, byte } of details.serialBytes) expect(byteOnLine(details, from)).toBe(byte);
    for (const { from, to, bytes } of details.outgoing) {
      const inside = details.serialBytes.filter((each) => each.from >= from && each.to <= to);
      expect(inside.map(({ byte }) => byte)).toEqual(bytes);
    }
  });

  test("its reports of the mouse are its frames, in order", () => {
    for (const [index, { bytes, from, to }] of details.incoming.entries()) {
      const own = details.frames.filter(({ report }) => report === index);
      expect(own.map(({ byte }) => byte)).toEqual(bytes);
      expect(own.map(({ meaning }) => meaning)).toEqual(["byte 1 of 3", "byte 2 of 3", "byte 3 of 3"]);
      expect([own[0]?.from, own.at(-1)?.to]).toEqual([from, to]);
    }
  });

  // Names of commands and replies: EM84502 data sheet, section E; what the sample does is in its ps2.c.
  test("says what the bytes of the conversation mean", () => {
    const said = details.frames
      .filter(({ report }) => report === undefined)
      .map(({ sender, byte, meaning }) => `${sender} ${byte.toString(16)} ${meaning}`);
    expect(said.slice(0, 10)).toEqual([
      "mouse aa self-test passed",
      "mouse 0 id: plain mouse, three-byte reports",
      "host ff reset",
      "mouse fa acknowledge",
      "mouse aa self-test passed",
      "mouse 0 id: plain mouse, three-byte reports",
      "host f3 set sample rate",
      "mouse fa acknowledge",
      "host 28 argument of set sample rate: 40",
      "mouse fa acknowledge",
    ]);
    expect(said.at(-2)).toBe(`host ${codeOf("enable reporting").toString(16)} enable reporting`);
  });

  test("every report that moved or clicked has a thread to one that came later", () => {
    const { incoming, outgoing, threads } = details;
    const moved = incoming.flatMap(({ values }, index) =>
      (values.x ?? 0) !== 0 || (values.y ?? 0) !== 0 ? [index] : [],
    );
    const threaded = new Set(threads.map((thread) => thread.incoming));
    expect(moved.filter((index) => !threaded.has(index))).toEqual([]);
    for (const thread of threads) {
      expect(outgoing[thread.outgoing]?.to).toBeGreaterThan(incoming[thread.incoming]?.to ?? 0);
    }
  });

  test("edges of the firmware have the place that made them", () => {
    const { edges, places } = details;
    const own = edges.filter(({ by, wire }) => by === "firmware" && (wire === "clock" || wire === "data"));
    const texts = new Set(
      own.map(({ place = -1 }) => {
        const span = places[place];
        return span && files[span.file]?.slice(span.start, span.end);
      }),
    );
    expect(own.length).toBeGreaterThan(30);
    // The statements of ps2.c that pull a wire and let it go.
    for (const text of texts) expect(text).toMatch(/DDRD|DDR|PORT|DIR/);
  });
});

describe("what ran when", () => {
  const main = (text: string) => ({
    "main.c": `#include <avr/io.h>\n#include <avr/interrupt.h>\n#include <util/delay.h>\n${text}`,
    "edgewise.json": files["edgewise.json"] ?? "",
  });

  // avr-libc, <util/delay.h>: _delay_us waits that long; the call around it takes a few cycles of 62.5 ns more.
  test("a function lasts as long as what it waits for, and its edges lie within it", () => {
    const { code, edges, places } = runOf(
      main(`
        static void hold(void) { DDRD |= 4; _delay_us(100); DDRD &= ~4; }
        int main(void) { _delay_ms(5); hold(); for (;;) { } }`),
    ).details;
    const [hold, more] = code.spans.filter(({ name }) => name === "hold");
    if (hold === undefined) throw new Error("hold never ran");
    expect(more).toBeUndefined();
    expect(hold.to - hold.from).toBeGreaterThanOrEqual(100 * US);
    expect(hold.to - hold.from).toBeLessThan(103 * US);
    expect(hold).toMatchObject({ kind: "function", depth: 1, interrupting: false, calls: 1 });
    expect(places[hold.place ?? -1]?.file).toBe("main.c");
    const [low] = edges.filter(({ wire }) => wire === "clock");
    expect(low?.time).toBeGreaterThanOrEqual(hold.from);
    expect(low?.time).toBeLessThanOrEqual(hold.to);
  });

  // ATmega328P data sheet: timer 0 at a prescaler of 64 and 16 MHz overflows every 256 * 64 / 16 MHz = 1.024 ms.
  test("an interrupt is there each time it comes", () => {
    const { code } = runOf(
      main(`
        static volatile unsigned char turns;
        ISR(TIMER0_OVF_vect) { turns++; }
        int main(void) { TCCR0B = 3; TIMSK0 = 1; sei(); for (;;) { } }`),
    ).details;
    const starts = code.spans.filter(({ name }) => name === "TIMER0_OVF_vect").map(({ from }) => from);
    expect(starts.length).toBeGreaterThan(100);
    for (const [index, from] of starts.slice(1, 50).entries()) {
      expect((from - (starts[index] ?? 0)) / US).toBeCloseTo(1024, -1);
    }
    expect(code.spans.find(({ kind }) => kind === "interrupt")).toMatchObject({
      depth: 0,
      interrupting: true,
    });
  });
});
