import { describe, expect, test } from "vitest";
import type { MouseByte } from "../../../../src-core/bench/run-record.ts";
import { judgeRun } from "../../../../src-core/bench/verdicts/judge-run.ts";
import type { Edge } from "../../../../src-core/bench/wires/edge.ts";
import { edge, faults, handMade, MS, US } from "./hand-made.ts";
import { place } from "./place.ts";

/** Where the firmware pulls the clock, asks with data, and puts bits. */
const [clockPlace, dataPlace, bitPlace] = [place(10), place(20), place(30)];

interface Sending {
  readonly byte: number;
  /** The clock is pulled low then. */
  readonly at?: number;
  readonly hold?: number;
  /** From the release to the first pulse. */
  readonly wait?: number;
  /** From the falling clock to the bit. */
  readonly change?: number;
  /** The same for this bit alone: 1 is the first data bit, 9 the parity bit. */
  readonly oneChange?: readonly [bit: number, delay: number];
  readonly wrongParity?: boolean;
  readonly acknowledged?: boolean;
}

const CLOCK_LOW = 40 * US;
const CLOCK_HIGH = 40 * US;

/**
 * The edges of one byte to the mouse, by "The PS/2 Mouse/Keyboard Protocol", Host-to-Device: clock low, data low, clock let go,
 * then eleven pulses of the mouse; bits change while the clock is low; the mouse pulls data low for the last pulse.
 */
function sending(options: Sending): { readonly edges: readonly Edge[]; readonly end: number } {
  const { byte, at = 100 * MS, hold = 100 * US, wait = 500 * US, change = 15 * US } = options;
  const edges: Edge[] = [
    edge(at, "clock", 0, "firmware", clockPlace),
    edge(at + hold - 2 * US, "data", 0, "firmware", dataPlace),
    edge(at + hold, "clock", 1, "firmware", clockPlace),
  ];
  const bits = Array.from({ length: 8 }, (_, bit) => Math.floor(byte / 2 ** bit) % 2);
  const odd = bits.filter((bit) => bit === 1).length % 2 === 0 ? 1 : 0;
  const levels = [...bits, options.wrongParity === true ? 1 - odd : odd, 1];
  let level = 0;
  let fall = at + hold + wait;
  for (let pulse = 1; pulse <= 11; pulse++) {
    edges.push(edge(fall, "clock", 0, "mouse"), edge(fall + CLOCK_LOW, "clock", 1, "mouse"));
    const next = levels[pulse - 1];
    const delay = options.oneChange?.[0] === pulse ? options.oneChange[1] : change;
    if (next !== undefined && next !== level) {
      edges.push(edge(fall + delay, "data", next === 1 ? 1 : 0, "firmware", bitPlace));
      level = next;
    }
    fall += CLOCK_LOW + CLOCK_HIGH;
  }
  const last = fall - CLOCK_LOW - CLOCK_HIGH;
  if (options.acknowledged !== false) {
    edges.push(
      edge(last - 20 * US, "data", 0, "mouse"),
      edge(last + CLOCK_LOW + 15 * US, "data", 1, "mouse"),
    );
  }
  return { edges: edges.toSorted((a, b) => a.time - b.time), end: last + CLOCK_LOW };
}

function reply(start: number, byte: number): MouseByte {
  return {
    start,
    end: start + 0.9 * MS,
    byte,
    whole: true,
    resent: false,
    disturbed: false,
    report: undefined,
  };
}

/** One byte and its acknowledge FA 5 ms later. */
function one(options: Sending, ended = 400 * MS): Parameters<typeof faults>[0] {
  const { edges, end } = sending(options);
  return { edges, mouse: { ...handMade({}).mouse, sent: [reply(end + 5 * MS, 0xfa)] }, ended };
}

function measured(said: Parameters<typeof faults>[0], id: string) {
  return judgeRun(handMade(said)).figures.measured.find((each) => each.id === id);
}

describe("a byte to the mouse", () => {
  test.each([0x00, 0xf4, 0xff, 0xe8, 0x55])("%i as the article has it is right", (byte) => {
    expect(faults(one({ byte }))).toEqual([]);
  });

  // "Bring the Clock line low for at least 100 microseconds": The PS/2 Mouse/Keyboard Protocol, Host-to-Device.
  test("the clock is held for 100 us", () => {
    expect(faults(one({ byte: 0xf4, hold: 99.5 * US }))).toEqual([["ps2/request-hold-short", 99.5, 10]]);
    expect(measured(one({ byte: 0xf4, hold: 130 * US }), "ps2.request-hold")).toMatchObject({
      least: 130,
      most: 130,
      count: 1,
    });
  });

  // HDNS-2200 data sheet, p. 9, note 2: stable 1 us after the clock rose. F4 is 0 0 1 0 1 1 1 1: bit 4 goes to 0.
  test("a bit that changes behind the rising clock", () => {
    expect(faults(one({ byte: 0xf4, oneChange: [4, CLOCK_LOW + 1 * US] }))).toEqual([]);
    expect(faults(one({ byte: 0xf4, oneChange: [4, CLOCK_LOW + 3 * US] }))).toEqual([
      ["ps2/sample-edge", 3, 30],
    ]);
  });

  // T3 of the HDNS-2200 is 22.5 us at most; the article advises up to 25 us.
  test("a bit that changes late while the clock is low", () => {
    expect(faults(one({ byte: 0xf4, change: 25 * US }))).toEqual([]);
    expect(faults(one({ byte: 0xf4, oneChange: [4, 27 * US] }))).toEqual([["ps2/sample-edge", 27, 30]]);
    expect(measured(one({ byte: 0xf4, oneChange: [4, 20 * US] }), "ps2.data-change-delay")?.most).toBe(20);
  });

  test("the parity bit makes the number of ones odd", () => {
    const { failures } = judgeRun(handMade(one({ byte: 0xf4, wrongParity: true })));
    expect(failures).toMatchObject([{ rule: "ps2/parity-wrong", span: { file: "ferry.c", start: 30 } }]);
    expect(failures[0]?.message).toContain("0xF4");
  });

  // NT6881 data sheet, p. 14, T9: 5 us at least.
  test("the acknowledge's set-up is measured", () => {
    expect(measured(one({ byte: 0xf4 }), "ps2.acknowledge-setup")?.least).toBe(20);
  });

  test("data that goes low only behind the release is a request all the same", () => {
    const { edges, ...rest } = one({ byte: 0xf4, hold: 100 * US });
    const late = (edges ?? []).map((each) =>
      each.cause.at === dataPlace ? edge(100 * MS + 105 * US, "data", 0, "firmware", dataPlace) : each,
    );
    const said = { ...rest, edges: late.toSorted((a, b) => a.time - b.time) };
    expect(faults(said)).toEqual([]);
    // Start 0, F4 as 0 0 1 0 1 1 1 1, parity 0, stop 1: the level changes five times.
    expect(measured(said, "ps2.data-change-delay")?.count).toBe(5);
  });
});

describe("what the firmware makes of answers", () => {
  /** Requests that the mouse never clocks; data is let go after so long. */
  const givenUp = (after: number): Parameters<typeof faults>[0] => ({
    edges: [
      edge(100 * MS, "clock", 0, "firmware", clockPlace),
      edge(100.1 * MS, "data", 0, "firmware", dataPlace),
      edge(100.12 * MS, "clock", 1, "firmware", clockPlace),
      edge(100.12 * MS + after, "data", 1, "firmware", dataPlace),
    ],
    ended: 400 * MS,
  });

  // The PS/2 Mouse/Keyboard Protocol, Fig. 4 (a): 15 ms.
  test.each([
    [15, []],
    [14, [["ps2/reply-timeout-short", 14, 10]]],
  ] as const)("the mouse is given %i ms to begin clocking", (ms, told) => {
    expect(faults(givenUp(ms * MS))).toEqual(told);
  });

  const two = (
    first: Sending,
    second: Sending,
    sent: (end: number) => readonly MouseByte[],
    ended = 800 * MS,
  ) => {
    const one = sending(first);
    const other = sending(second);
    const edges = [...one.edges, ...other.edges];
    const answers = [...sent(one.end), reply(other.end + 5 * MS, 0xfa)];
    return { edges, mouse: { ...handMade({}).mouse, sent: answers }, ended };
  };

  // EM84502 data sheet, section D vi and vii: 25 ms.
  test.each([
    [25, []],
    [24, [["ps2/reply-timeout-short", 24, 10]]],
  ] as const)("the mouse is given %i ms to answer", (ms, told) => {
    const end = sending({ byte: 0xf3 }).end;
    expect(faults(two({ byte: 0xf3 }, { byte: 0x28, at: end + ms * MS }, () => []))).toEqual(told);
  });

  test("an answer that was cut off is none", () => {
    const cut = (end: number) => [{ ...reply(end + 5 * MS, 0xfa), whole: false }];
    const end = sending({ byte: 0xf3 }).end;
    expect(faults(two({ byte: 0xf3 }, { byte: 0x28, at: end + 5.5 * MS }, cut))).toEqual([
      ["ps2/reply-timeout-short", 5.5, 10],
    ]);
  });

  // EM84502 data sheet, section D i: after FE the byte is to be sent again.
  test.each([
    ["the same byte", 0x28, []],
    ["the command whose argument it was", 0xf3, []],
    ["a reset", 0xff, []],
    ["another byte", 0xe8, ["ps2/ack-ignored"]],
  ] as const)("after a refusal comes %s", (_, byte, told) => {
    const [command, argument] = [sending({ byte: 0xf3 }), sending({ byte: 0x28, at: 120 * MS })];
    const next = sending({ byte, at: 160 * MS });
    const sent = [
      reply(command.end + 5 * MS, 0xfa),
      reply(argument.end + 5 * MS, 0xfe),
      reply(next.end + 5 * MS, 0xfa),
    ];
    const edges = [...command.edges, ...argument.edges, ...next.edges];
    const found = faults({ edges, mouse: { ...handMade({}).mouse, sent }, ended: 400 * MS });
    expect(found.map(([rule]) => rule)).toEqual(told);
  });

  test("after a refusal comes nothing at all", () => {
    const { edges, end } = sending({ byte: 0xf4 });
    const mouse = { ...handMade({}).mouse, sent: [reply(end + 5 * MS, 0xfe)] };
    expect(faults({ edges, mouse, ended: 3000 * MS })).toEqual([["ps2/ack-ignored", undefined, 10]]);
  });

  test("a byte that is not acknowledged on the wire is refused", () => {
    const said = two({ byte: 0xf4, acknowledged: false }, { byte: 0xe8, at: 160 * MS }, () => []);
    expect(faults(said).map(([rule]) => rule)).toEqual(["ps2/ack-ignored"]);
  });

  // FreeBSD psm(4), KBD_RESETDELAY and KBD_MAXWAIT: a second for the self-test.
  test.each([
    [500, ["ps2/reset-wait-short"]],
    [1005, []],
  ] as const)("after a reset the mouse is left alone for %i ms", (ms, told) => {
    const end = sending({ byte: 0xff }).end;
    const said = two(
      { byte: 0xff },
      { byte: 0xf4, at: end + 5.9 * MS + ms * MS },
      (time) => [reply(time + 5 * MS, 0xfa)],
      2500 * MS,
    );
    expect(faults(said).map(([rule]) => rule)).toEqual(told);
  });
});

describe("the clock held to keep the mouse quiet", () => {
  const held = (from: number, us: number): readonly Edge[] => [
    edge(from, "clock", 0, "firmware", clockPlace),
    edge(from + us * US, "clock", 1, "firmware", clockPlace),
  ];

  test("100 us are enough, less is not", () => {
    expect(faults({ edges: held(100 * MS, 100), ended: 400 * MS })).toEqual([]);
    expect(faults({ edges: held(100 * MS, 40), ended: 400 * MS })).toEqual([
      ["ps2/request-hold-short", 40, 10],
    ]);
  });

  test("holds are summed up", () => {
    const edges = [...held(100 * MS, 300), ...held(200 * MS, 500)];
    expect(judgeRun(handMade({ edges, ended: 400 * MS })).figures.held).toEqual({
      total: 800 * US,
      longest: 500 * US,
    });
  });

  test("the same fault at one place is told once, at its worst", () => {
    const edges = [...held(100 * MS, 60), ...held(110 * MS, 40), ...held(120 * MS, 50)];
    const { failures } = judgeRun(handMade({ edges, ended: 400 * MS }));
    expect(failures).toMatchObject([{ measured: { value: 40, unit: "us" }, time: 100 * MS, times: 3 }]);
  });

  test("counts that overflow in a mouse that was kept quiet", () => {
    const report = (sampled: number, sentAt: number, x: number) => ({
      sampled,
      bytes: [8, 0, 0],
      values: { x: 255, y: 0, left: false, right: false, middle: false },
      lost: { x, y: 0, wheel: 0 },
      sentAt,
      readableAt: sentAt,
    });
    const reports = [report(100 * MS, 127 * MS, 0), report(130 * MS, 133 * MS, 45)];
    const mouse = { ...handMade({}).mouse, reports };
    expect(faults({ edges: held(101 * MS, 22_500), mouse, ended: 400 * MS })).toEqual([
      ["serial/blocks-receive", 45, 10],
    ]);
    // Nothing waited any more when the clock was held.
    const quiet = { ...mouse, reports: [report(100 * MS, 103 * MS, 0), report(130 * MS, 133 * MS, 45)] };
    expect(faults({ edges: held(104 * MS, 22_500), mouse: quiet, ended: 400 * MS })).toEqual([]);
    // A flick overflows without anybody's fault.
    expect(faults({ edges: held(101 * MS, 200), mouse, ended: 400 * MS })).toEqual([]);
  });
});

describe("setting the mouse up", () => {
  const selfTest = { kind: "self-test", time: 100 * MS, length: 400 * MS } as const;
  const enabled = (end: number) => ({ start: end - MS, end, byte: 0xf4, fault: "none" }) as const;
  const alive: readonly Edge[] = [edge(50 * MS, "rxd", 0, "firmware"), edge(51 * MS, "rxd", 1, "firmware")];

  // 3 s: common practice, no source.
  test.each([
    ["soon", [enabled(600 * MS)], []],
    ["by asking for each report", [{ ...enabled(600 * MS), byte: 0xeb }], []],
    ["late", [enabled(4000 * MS)], ["ps2/reporting-not-enabled"]],
    ["never", [], ["ps2/reporting-not-enabled"]],
  ] as const)("it is asked for reports %s", (_, received, told) => {
    const mouse = { ...handMade({}).mouse, happenings: [selfTest], received };
    expect(faults({ edges: alive, mouse, ended: 6000 * MS }).map(([rule]) => rule)).toEqual(told);
  });

  test("a second self-test needs a second setting up", () => {
    const happenings = [selfTest, { ...selfTest, time: 1000 * MS }];
    const mouse = { ...handMade({}).mouse, happenings, received: [enabled(600 * MS)] };
    const { failures } = judgeRun(handMade({ edges: alive, mouse, ended: 6000 * MS }));
    expect(failures).toMatchObject([{ rule: "ps2/reporting-not-enabled", time: 1400 * MS }]);
  });

  test("resets without end are no setting up", () => {
    const happenings = Array.from({ length: 10 }, (_, index) => ({
      ...selfTest,
      time: (100 + 600 * index) * MS,
    }));
    const mouse = { ...handMade({}).mouse, happenings };
    const { failures } = judgeRun(handMade({ edges: alive, mouse, ended: 8000 * MS }));
    // From the end of the first self-test on, at 500 ms.
    expect(failures).toMatchObject([
      { rule: "ps2/reporting-not-enabled", measured: { value: 7.5 }, times: 1 },
    ]);
  });

  test("a few resets in a row are, where they end", () => {
    const happenings = [100, 1200, 2300].map((time) => ({ ...selfTest, time: time * MS, length: 1000 * MS }));
    const mouse = { ...handMade({}).mouse, happenings, received: [enabled(3400 * MS)] };
    expect(faults({ edges: alive, mouse, ended: 6000 * MS })).toEqual([]);
  });

  test("a mouse that takes the port for USB", () => {
    const mouse = { ...handMade({}).mouse, happenings: [{ kind: "chose-usb", time: 300 * MS } as const] };
    expect(faults({ edges: alive, mouse })).toEqual([["ps2/no-pullup", undefined, undefined]]);
  });

  test("a mouse that does so because a request holds data low: where it is pulled, and that the pull-ups are not missing", () => {
    const mouse = { ...handMade({}).mouse, happenings: [{ kind: "chose-usb", time: 300 * MS } as const] };
    const told = (until: number) => {
      const held = [
        edge(295 * MS, "data", 0, "firmware", place(64)),
        edge(until * MS, "data", 1, "firmware", place(66)),
      ];
      const edges = [...alive, ...held].toSorted((a, b) => a.time - b.time);
      const { failures } = judgeRun(handMade({ edges, mouse }));
      return failures.find(({ rule }) => rule === "ps2/no-pullup");
    };
    expect(told(310)).toMatchObject({
      span: { start: 64 },
      message: expect.stringContaining("the firmware pulls data low when it looks"),
    });
    expect(told(299)).toMatchObject({
      span: undefined,
      message: expect.stringContaining("must be pulled up"),
    });
  });
});

describe("what the engine and the wires saw", () => {
  test.each([
    ["torn-access", "board/shared-not-atomic"],
    ["sampled-wrong", "ps2/sample-edge"],
  ] as const)("%s is told as %s", (kind, rule) => {
    const observations = [{ kind, time: 5 * MS, at: place(70) }];
    expect(faults({ firmware: { observations, lastAt: undefined } })).toEqual([[rule, undefined, 70]]);
  });

  test("a missed edge alone does no harm", () => {
    const observations = [{ kind: "edge-missed", time: 5 * MS, at: place(70) }] as const;
    expect(faults({ firmware: { observations, lastAt: undefined } })).toEqual([]);
  });

  test.each(["driven-high", "fight"] as const)("%s", (kind) => {
    const conflicts = [
      { time: 7 * MS, wire: "data", kind, cause: { party: "firmware", at: place(80) } },
    ] as const;
    expect(faults({ conflicts })).toEqual([["ps2/line-driven-high", undefined, 80]]);
  });
});

describe("bytes as they are read back from the wires", () => {
  test("the levels at the mouse's sample make the byte that was sent", () => {
    for (const byte of [0x00, 0x5a, 0xa5, 0xf3, 0xff]) {
      const { failures } = judgeRun(handMade(one({ byte, wrongParity: true })));
      // All five have an even number of ones, so that the right parity bit is 1 and the wrong one 0.
      expect(failures[0]?.message).toContain(`0x${byte.toString(16).toUpperCase().padStart(2, "0")} is sent`);
      expect(failures[0]?.message).toContain("parity bit 0");
    }
  });
});
