import { describe, expect, test } from "vitest";
import { mice } from "../../../../src-core/bench/mice/profiles.ts";
import { step } from "../../../../src-core/bench/strokes/stroke.ts";
import { ms, us } from "../../../../src-core/bench/time/time.ts";
import { type Desk, desk, edgesOf, hex, readyDesk } from "./desk.ts";

/**
 * Limits in us, as LPC47M102S, Fig. 33 (t1 to t4) has them: data to falling clock 5 to 25; rising clock to data 5 to the
 * high time less 5; clock low 30 to 50; clock high 30 to 50. "The PS/2 Mouse/Keyboard Protocol" (2003) repeats them.
 */
const limits = { setup: [5, 25], hold: 5, low: [30, 50], high: [30, 50] } as const;

/** Clock pulses and data changes, in us from the first falling edge. */
function pulses({ wires, host }: Desk, of: number) {
  const { start = 0, end = 0 } = host.heard[of] ?? {};
  const clock = edgesOf(wires, "clock", start, end + 60 * us);
  const falls = clock.filter(({ level }) => level === 0).map(({ time }) => (time - start) / us);
  const rises = clock.filter(({ level }) => level === 1).map(({ time }) => (time - start) / us);
  const data = edgesOf(wires, "data", start - 30 * us, end + 60 * us).map(({ time }) => (time - start) / us);
  return { falls: falls.slice(0, 11), rises: rises.slice(0, 11), data };
}

function within(value: number, [least, most]: readonly [number, number]): void {
  expect(value).toBeGreaterThanOrEqual(least);
  expect(value).toBeLessThanOrEqual(most);
}

/** A reply with many changes of data: FA, AA 00 and a status of 00 02 64. */
function talk(mouse: string, seed = 1): Desk {
  const talking = readyDesk(mouse, seed);
  talking.askAll([0xe9, 0xf2]);
  return talking;
}

describe("bytes from the mouse", () => {
  test.each(mice.map(({ name }) => name))("%s: every phase is within the limits", (name) => {
    const talked = talk(name);
    expect(talked.host.heard.length).toBeGreaterThan(3);
    for (const index of talked.host.heard.keys()) {
      const { falls, rises, data } = pulses(talked, index);
      expect([falls.length, rises.length]).toEqual([11, 11]);
      for (const [bit, fall] of falls.entries()) {
        const rise = rises[bit] ?? Number.NaN;
        within(rise - fall, limits.low);
        const next = falls[bit + 1];
        if (next === undefined) continue;
        within(next - rise, limits.high);
        const changes = data.filter((time) => time > fall && time < next);
        for (const change of changes) {
          expect(change - rise).toBeGreaterThanOrEqual(limits.hold);
          within(next - change, limits.setup);
        }
      }
      // The start bit came that long before the first falling edge, too.
      within(-(data.filter((time) => time <= 0).at(-1) ?? Number.NaN), limits.setup);
    }
  });

  test("the clock runs at 10 kHz and at 16.7 kHz (The PS/2 Mouse/Keyboard Protocol, General Description)", () => {
    const periods = (mouse: string): readonly number[] => {
      const { falls } = pulses(talk(mouse), 1);
      return falls.slice(1).map((fall, index) => fall - (falls[index] ?? 0));
    };
    expect(new Set(periods("clock-at-10-khz"))).toEqual(new Set([100]));
    expect(new Set(periods("clock-at-16-7-khz"))).toEqual(new Set([60]));
    expect(new Set(periods("plain"))).toEqual(new Set([80]));
    expect(new Set(periods("jittering-clock")).size).toBe(10);
  });

  test("the record tells the periods as made, and when each byte was on the wires", () => {
    const { mouse, host } = talk("jittering-clock");
    for (const [index, { leastPeriod, mostPeriod, byte, whole, start, clocks }] of mouse.record.sent
      .slice(-host.heard.length)
      .entries()) {
      const heard = host.heard[index];
      const { falls } = pulses(talk("jittering-clock"), index);
      const periods = falls.slice(1).map((fall, each) => fall - (falls[each] ?? 0));
      expect(leastPeriod / us).toBeCloseTo(Math.min(...periods), 6);
      expect(mostPeriod / us).toBeCloseTo(Math.max(...periods), 6);
      expect([byte, whole, clocks]).toEqual([heard?.byte, true, 11]);
      within(((heard?.start ?? 0) - start) / us, limits.setup);
    }
  });

  // The first pulse is the start bit's, the ninth the last data bit's: article, frame.
  test("the record tells the falling edge at which the last data bit can be read", () => {
    const talked = talk("plain");
    const sent = talked.mouse.record.sent.slice(-talked.host.heard.length);
    for (const [index, { readableAt = Number.NaN }] of sent.entries()) {
      const { falls } = pulses(talked, index);
      expect((readableAt - (talked.host.heard[index]?.start ?? 0)) / us).toBe(falls[8]);
    }
  });

  test("the clock is high for 50 us before the next byte (article, Device-to-Host)", () => {
    for (const mouse of ["plain", "answers-at-once", "clock-at-16-7-khz"]) {
      const { wires, host } = talk(mouse);
      const ends = host.heard.map(({ end }) => end);
      for (const end of ends) {
        const rise = edgesOf(wires, "clock", end, end + 60 * us)[0]?.time ?? Number.NaN;
        const next = edgesOf(wires, "data", rise, rise + 10 * ms).find(
          ({ level, cause }) => level === 0 && cause.party === "mouse",
        );
        if (next !== undefined) expect(next.time - rise).toBeGreaterThanOrEqual(50 * us);
      }
    }
  });
});

describe("bytes to the mouse", () => {
  test.each(mice.map(({ name }) => name))(
    "%s: clock, acknowledge and times are within the limits",
    (name) => {
      const { wires, mouse, host, queue } = readyDesk(name);
      const asked = queue.now;
      host.send(0xf4);
      const heard = () => host.heard[0]?.start ?? Number.NaN;
      queue.advanceTo(asked + 40 * ms);
      const clock = edgesOf(wires, "clock", asked + 100 * us, heard() - 1);
      const released = clock[0]?.time ?? Number.NaN;
      expect(clock[0]?.level).toBe(1);
      const falls = clock.filter(({ level }) => level === 0).map(({ time }) => time / us);
      const rises = clock.slice(1).flatMap(({ level, time }) => (level === 1 ? [time / us] : []));
      expect([falls.length, rises.length]).toEqual([11, 11]);
      for (const [bit, fall] of falls.entries()) {
        within((rises[bit] ?? Number.NaN) - fall, limits.low);
        const next = falls[bit + 1];
        if (next !== undefined) within(next - (rises[bit] ?? Number.NaN), limits.high);
      }
      // The host takes anything sooner than 60 us as a disturbance (ps2-gpio.c); the mouse looks every 10 ms at least
      // (article, Host-to-Device); the byte is whole within 2 ms (the same, Fig. 4 (b)).
      within((falls[0] ?? 0) - released / us, [60, 10_000]);
      expect((rises[10] ?? Number.NaN) - (falls[0] ?? 0)).toBeLessThanOrEqual(2000);
      // The answer begins within 25 ms (EM84502, section D vi).
      expect(heard() - released).toBeLessThanOrEqual(25 * ms + 25 * us);
      // Acknowledge: low at least 5 us before the 11th falling edge, let go 5 to 25 us after it rose (NT6881, T9, T10).
      const byMouse = edgesOf(wires, "data", released, heard() - 30 * us).filter(
        ({ cause }) => cause.party === "mouse",
      );
      const [low, high] = byMouse.map(({ time }) => time / us);
      expect(byMouse.map(({ level }) => level)).toEqual([0, 1]);
      expect((falls[10] ?? 0) - (low ?? Number.NaN)).toBeGreaterThanOrEqual(5);
      // What is seen of the letting go is the line's rise, a microsecond later.
      within((high ?? Number.NaN) - 1 - (rises[10] ?? 0), [5, 25]);
      const received = mouse.record.received.at(-1);
      expect(received).toMatchObject({ byte: 0xf4, fault: "none", hold: 100 * us, released });
      expect((received?.start ?? 0) / us).toBe(falls[0]);
    },
  );

  // The mouse looks 5 to 25 us after the rising edge (LPC47M102S, Fig. 33, t6; NT6881, T8).
  test.each(["plain", "clock-at-10-khz", "clock-at-16-7-khz", "jittering-clock"])(
    "%s: a bit needs to be right from 5 to 25 us after the clock rose",
    (mouse) => {
      for (const byte of [0xf3, 0x0a]) {
        const { ask, mouse: virtual } = readyDesk(mouse);
        expect(hex(ask(byte, { narrowBits: true }))).toBe(byte === 0xf3 ? "FA" : "FE");
        expect(virtual.record.received.at(-1)).toMatchObject({ byte, fault: "none" });
      }
    },
  );

  test("answers come in 2 ms, at once and after 25 ms, as the titles say", () => {
    const delay = (mouse: string): number => {
      const { ask, host, mouse: virtual } = readyDesk(mouse);
      ask(0xf4);
      return ((host.heard[0]?.start ?? 0) - (virtual.record.received[0]?.released ?? 0)) / ms;
    };
    expect(delay("plain")).toBeCloseTo(2, 1);
    expect(delay("answers-at-once")).toBeLessThan(1.1);
    expect(delay("answers-late")).toBeCloseTo(25, 1);
  });
});

describe("power-on", () => {
  /** Reset of 0.15 to 2.0 s, then the self-test: Technical Reference 5160, p. 4-25; 300 to 1000 ms from memory. */
  test.each([
    ["plain", 450, 450],
    ["slow-to-start", 2500, 3000],
  ])("%s announces itself with AA 00 after %i to %i ms", (name, least, most) => {
    for (const seed of [1, 2, 3]) {
      const { queue, host, wires } = desk(name, seed);
      queue.advanceTo(3100 * ms);
      expect(hex(host.bytes())).toBe("AA 00");
      within((wires.edges[0]?.time ?? 0) / ms, [least, most + 1]);
    }
  });

  test("the self-test of the slow mouse takes another time with another seed", () => {
    const first = (seed: number) => {
      const { queue, wires } = desk("slow-to-start", seed);
      queue.advanceTo(3100 * ms);
      return wires.edges[0]?.time;
    };
    expect(first(1)).not.toBe(first(2));
    expect(first(1)).toBe(first(1));
  });
});

test("the same seed gives the same edges to the last one, another seed other ones", () => {
  const run = (seed: number) => {
    const { mouse, ask, pass, wires } = readyDesk("jittering-clock", seed);
    ask(0xf4);
    mouse.perform({ name: "", title: "", steps: [step({ over: 200 * ms, right: 300, down: -100 })] });
    pass(300);
    return JSON.stringify([wires.edges, mouse.record]);
  };
  expect(run(7)).toBe(run(7));
  expect(run(7)).not.toBe(run(8));
});
