import { describe, expect, test } from "vitest";
import type { SerialReport } from "../../../../src-core/bench/pcs/reports/report-receiver.ts";
import type { MouseReport, Run } from "../../../../src-core/bench/run-record.ts";
import { judgeRun } from "../../../../src-core/bench/verdicts/judge-run.ts";
import { threadsOf } from "../../../../src-core/bench/verdicts/motion/threads.ts";
import type { LayoutName } from "../../../../src-core/model/layouts/layout.ts";
import type { ReportValues } from "../../../../src-core/model/layouts/values.ts";
import { layouts } from "../../../../src-core/model/report-layouts.ts";
import { faults, handMade, MS } from "./hand-made.ts";
import { place } from "./place.ts";

type Values = Partial<Record<"x" | "y" | "wheel", number>> &
  Partial<Record<"left" | "right" | "middle", boolean>>;
type At = readonly [ms: number, values: Values];

const up = { left: false, right: false, middle: false };

/** A report of the mouse that was whole at a moment; its last data bit came 0.2 ms before, with a clock of some 12 kHz. */
const into = ([time, values]: At): MouseReport => ({
  sampled: (time - 3) * MS,
  bytes: [8, 0, 0],
  values: { x: 0, y: 0, ...up, ...values } satisfies ReportValues,
  lost: { x: 0, y: 0, wheel: 0 },
  sentAt: time * MS,
  readableAt: (time - 0.2) * MS,
});

/** A report at the PC that was whole at a moment, and had begun 22.5 ms before: three bytes of nine bits, mouse(4). */
const outOf = ([time, values]: At): SerialReport => ({
  from: (time - 22.5) * MS,
  time: time * MS,
  bytes: [0x40, 0, 0],
  values: { x: 0, y: 0, ...values } satisfies ReportValues,
});

interface Motion {
  readonly into: readonly At[];
  readonly out: readonly At[];
  readonly layout?: LayoutName;
  readonly scale?: number;
  readonly sessions?: Run["pc"]["sessions"];
  readonly ended?: number;
}

function motion({
  layout = "two-button",
  scale = 1,
  sessions = [{ from: 0, to: undefined }],
  ...said
}: Motion): Partial<Run> {
  return {
    ended: (said.ended ?? 1000) * MS,
    mouse: { ...handMade({}).mouse, reports: said.into.map(into) },
    pc: { ...handMade({}).pc, sessions, reports: said.out.map(outOf) },
    wanted: { layout: layouts[layout], baud: 1200, scale },
  };
}

const judged = (said: Motion) => judgeRun(handMade(motion(said)));
const rules = (said: Motion) => faults(motion(said)).map(([rule]) => rule);

describe("counts", () => {
  // mouse(4): positive y is down at the PC; a PS/2 mouse counts upwards (HT82M35X data sheet, p. 3).
  test("the same sums, y turned over, are right", () => {
    const said: Motion = {
      into: [
        [100, { x: 5, y: 7 }],
        [110, { x: 3, y: -2 }],
      ],
      out: [[140, { x: 8, y: -5 }]],
    };
    expect(judged(said).failures).toEqual([]);
    expect(judged(said).figures.counts).toEqual([
      { axis: "x", in: 8, out: 8 },
      { axis: "y", in: 5, out: 5 },
    ]);
  });

  // mouse(4): in the five-byte layout y is negated, so that it counts upwards as on a PS/2 mouse.
  test("y is not turned over in the five-byte layout", () => {
    expect(rules({ layout: "five-byte", into: [[100, { y: 7 }]], out: [[140, { y: 7 }]] })).toEqual([]);
    expect(rules({ layout: "five-byte", into: [[100, { y: 7 }]], out: [[140, { y: -7 }]] })).toEqual([
      "report/y-direction",
    ]);
  });

  describe("movement in another direction", () => {
    const moves: readonly At[] = [
      [100, { x: 5, y: 7 }],
      [200, { x: 3, y: -2 }],
    ];
    const sent = (...values: readonly [Values, Values]): Motion => ({
      into: moves,
      out: [
        [140, values[0]],
        [240, values[1]],
      ],
    });

    test("up and down are exchanged", () => {
      const { failures, figures } = judged(sent({ x: 5, y: 7 }, { x: 3, y: -2 }));
      expect(failures).toMatchObject([
        { rule: "report/y-direction", message: "up and down are exchanged: up and down 5 in, -5 out" },
      ]);
      expect(figures.delay).toBeUndefined();
    });

    test("left and right are", () => {
      expect(judged(sent({ x: -5, y: -7 }, { x: -3, y: 2 })).failures).toMatchObject([
        { rule: "report/counts-lost", message: "left and right are exchanged: sideways 8 in, -8 out" },
      ]);
    });

    test("both axes are", () => {
      expect(judged(sent({ x: 7, y: -5 }, { x: -2, y: -3 })).failures).toMatchObject([
        {
          rule: "report/layout",
          message: expect.stringContaining("sideways 8 in, 5 out; up and down 5 in, 8 out"),
        },
      ]);
    });

    test("is not what a count too few is", () => {
      expect(rules(sent({ x: 5, y: 7 }, { x: 3, y: -1 }))).toEqual(["report/counts-lost"]);
    });

    test("is seen on the way where the sums are alike in the end, and is not late then", () => {
      const there = (y: number): Motion => ({
        into: [
          [100, { x: 1, y: 7 }],
          [500, { y: -7 }],
        ],
        out: [
          [140, { x: 1, y }],
          [540, { y: -y }],
        ],
      });
      expect(judged(there(-7)).failures).toEqual([]);
      const { failures, figures } = judged(there(7));
      expect(failures.map(({ rule }) => rule)).toEqual(["report/y-direction"]);
      expect(figures.delay).toBeUndefined();
    });

    test("is not blamed on a disturbance", () => {
      const said = motion(sent({ x: 5, y: 7 }, { x: 3, y: -2 }));
      const happenings = [{ kind: "glitch", time: 95 * MS }] as const;
      const mouse = { ...handMade({}).mouse, ...said.mouse, happenings };
      expect(faults({ ...said, mouse }).map(([rule]) => rule)).toEqual(["report/y-direction"]);
    });
  });

  test("one count is missing", () => {
    const said = motion({ into: [[100, { x: 5 }]], out: [[140, { x: 4 }]] });
    const { failures } = judgeRun(handMade(said));
    expect(failures).toMatchObject([
      {
        rule: "report/counts-lost",
        measured: { value: 4, unit: "counts" },
        limit: { atLeast: 5, atMost: 5 },
      },
    ]);
    expect(failures[0]?.message).toContain("sideways 5 in, 4 out");
  });

  test("a report that never came whole does not count", () => {
    const said = motion({ into: [[100, { x: 5 }]], out: [[140, { x: 5 }]] });
    const cut = { ...into([200, { x: 9 }]), sentAt: undefined };
    const mouse = { ...handMade({}).mouse, reports: [...(said.mouse?.reports ?? []), cut] };
    expect(faults({ ...said, mouse })).toEqual([]);
  });

  test.each([
    [0.5, 7, 3, []],
    [0.5, 7, 4, []],
    [0.5, 7, 2, ["report/counts-lost"]],
    [0.5, 8, 5, ["report/counts-lost"]],
    [2, 7, 14, []],
    [2, 7, 12, ["report/counts-lost"]],
  ])("with a scale of %s, %i in are %i out: %s", (scale, counted, out, told) => {
    expect(rules({ scale, into: [[100, { x: counted }]], out: [[140, { x: out }]] })).toEqual(told);
  });

  test("a step of the wheel stays one, whatever the scale", () => {
    const said: Motion = { layout: "wheel", scale: 0.5, into: [[100, { x: 4, wheel: -3 }]], out: [] };
    expect(rules({ ...said, out: [[140, { x: 2, wheel: -3 }]] })).toEqual([]);
    expect(rules({ ...said, out: [[140, { x: 2, wheel: -1 }]] })).toEqual(["report/counts-lost"]);
  });

  test("the wheel counts where the layout has one", () => {
    const said: Motion = { into: [[100, { wheel: -3 }]], out: [[140, { wheel: -2, middle: false }]] };
    expect(rules({ ...said, layout: "wheel" })).toEqual(["report/counts-lost"]);
    expect(rules({ ...said, layout: "two-button", out: [] })).toEqual([]);
  });

  test("nothing is said where the PC never listened", () => {
    const { failures, figures } = judged({ into: [[100, { x: 5 }]], out: [], sessions: [] });
    expect(failures).toEqual([]);
    expect(figures).toMatchObject({ counts: undefined, clicks: undefined, delay: undefined });
  });
});

describe("sessions", () => {
  const sessions = [
    { from: 0, to: 300 * MS },
    { from: 520 * MS, to: undefined },
  ];

  test("what was still to be sent when the PC cut in may be lost, and so may what came before it listens again", () => {
    const incoming: readonly At[] = [
      [100, { x: 5 }],
      [290, { x: 6 }],
      [400, { x: 7 }],
      [600, { x: 8 }],
    ];
    const first: At = [140, { x: 5 }];
    expect(rules({ sessions, into: incoming, out: [first, [640, { x: 8 }]] })).toEqual([]);
    expect(rules({ sessions, into: incoming, out: [first, [640, { x: 15 }]] })).toEqual([]);
    expect(rules({ sessions, into: incoming, out: [first, [640, { x: 7 }]] })).toEqual([
      "report/counts-lost",
    ]);
    expect(
      rules({
        sessions,
        into: incoming,
        out: [
          [140, { x: 12 }],
          [640, { x: 8 }],
        ],
      }),
    ).toEqual(["report/counts-lost"]);
  });

  test("a movement that the PC cut in two may be forgotten or sent to its end", () => {
    const incoming: readonly At[] = [
      [270, { x: 255, y: -255 }],
      [600, { x: 8 }],
    ];
    const first: At = [299, { x: 127, y: 127 }];
    expect(rules({ sessions, into: incoming, out: [first, [640, { x: 8 }]] })).toEqual([]);
    const rest: At = [560, { x: 127, y: 127 }];
    expect(rules({ sessions, into: incoming, out: [first, rest, [640, { x: 9, y: 1 }]] })).toEqual([]);
    expect(rules({ sessions, into: incoming, out: [first, [640, { x: 5 }]] })).toEqual([
      "report/counts-lost",
    ]);
  });

  test("a click that nobody told the PC of, as it came while RTS was off", () => {
    const incoming: readonly At[] = [
      [100, { x: 5 }],
      [400, { left: true }],
      [450, {}],
      [600, { x: 8 }],
    ];
    const said: Motion = {
      sessions,
      into: incoming,
      out: [
        [140, { x: 5 }],
        [640, { x: 8 }],
      ],
    };
    expect(judged(said)).toMatchObject({ failures: [], figures: { clicks: { in: 0, out: 0 } } });
  });

  test("a button that is held over a reset is told anew", () => {
    const incoming: readonly At[] = [
      [100, { left: true }],
      [600, { left: true, x: 1 }],
      [700, { left: false }],
    ];
    const out: readonly At[] = [
      [140, { left: true }],
      [640, { left: true, x: 1 }],
      [740, { left: false }],
    ];
    expect(rules({ sessions, into: incoming, out })).toEqual([]);
  });
});

describe("clicks", () => {
  const click: readonly At[] = [
    [100, { left: true }],
    [150, {}],
    [200, { right: true }],
    [250, {}],
  ];

  test("each goes down and up at the PC", () => {
    const said: Motion = {
      into: click,
      out: [
        [130, { left: true, right: false }],
        [180, { left: false, right: false }],
        [230, { left: false, right: true }],
        [280, { left: false, right: false }],
      ],
    };
    expect(judged(said)).toMatchObject({ failures: [], figures: { clicks: { in: 4, out: 4 } } });
  });

  test("one is missing", () => {
    const said: Motion = {
      into: click,
      out: [
        [130, { left: true }],
        [180, { left: false }],
      ],
    };
    const { failures } = judged(said);
    expect(failures).toMatchObject([
      { rule: "report/counts-lost", measured: { value: 0 }, limit: { atLeast: 2 } },
    ]);
    expect(failures[0]?.message).toContain("right button");
  });

  test("one is invented", () => {
    expect(
      rules({
        into: [],
        out: [
          [130, { left: true }],
          [180, { left: false }],
        ],
      }),
    ).toEqual(["report/counts-lost"]);
  });

  test("they come in another order", () => {
    const said: Motion = {
      into: click,
      out: [
        [130, { right: true }],
        [180, { right: false }],
        [230, { left: true }],
        [280, { left: false }],
      ],
    };
    const { failures } = judged(said);
    expect(failures.map(({ message }) => message)).toEqual([expect.stringContaining("after a button")]);
  });

  test("two that come in one report are in no order", () => {
    const said: Motion = {
      into: [
        [100, { right: true }],
        [110, { right: true, left: true }],
        [200, {}],
      ],
      out: [
        [140, { left: true, right: true }],
        [240, { left: false, right: false }],
      ],
    };
    expect(rules(said)).toEqual([]);
  });

  test("buttons that the layout lacks are not missed", () => {
    expect(
      rules({
        into: [
          [100, { middle: true }],
          [150, {}],
        ],
        out: [],
      }),
    ).toEqual([]);
  });
});

describe("delays", () => {
  test("from the incoming report to the end of the one that brings it: median and worst", () => {
    // The second and third are summed up in one report; delays are 30, 55, 45 and 40 ms.
    const said: Motion = {
      into: [
        [100, { x: 1 }],
        [110, { x: 2 }],
        [120, { x: 3 }],
        [300, { x: 4 }],
      ],
      out: [
        [130, { x: 1 }],
        [165, { x: 5 }],
        [340, { x: 4 }],
      ],
    };
    expect(judged(said).figures.delay).toEqual({ median: 45 * MS, worst: 55 * MS });
  });

  test("counts that did not fit go with the report that brings the last of them", () => {
    const said: Motion = {
      into: [[100, { x: 255 }]],
      out: [
        [130, { x: 127 }],
        [152.5, { x: 127 }],
        [175, { x: 1 }],
      ],
    };
    expect(judged(said).figures.delay).toEqual({ median: 75 * MS, worst: 75 * MS });
  });

  test("what is taken back before it could go out is not late, nor what is less than a count where they are scaled", () => {
    const back: Motion = {
      into: [
        [100, { x: 1 }],
        [110, { x: -1 }],
        [700, { x: 4 }],
      ],
      out: [[730, { x: 4 }]],
    };
    expect(judged(back).figures.delay).toEqual({ median: 30 * MS, worst: 30 * MS });
    const halved: Motion = {
      scale: 0.5,
      into: [
        [100, { x: 1 }],
        [700, { x: 1 }],
      ],
      out: [[730, { x: 1 }]],
    };
    expect(judged(halved).figures.delay).toEqual({ median: 30 * MS, worst: 30 * MS });
  });

  test("what goes out step by step is late for each step", () => {
    const slow: Motion = {
      into: [
        [100, { x: 1 }],
        [200, { x: -1 }],
      ],
      out: [
        [500, { x: 1 }],
        [600, { x: -1 }],
      ],
    };
    expect(judged(slow).figures.delay).toEqual({ median: 400 * MS, worst: 400 * MS });
  });

  test("a button's delay counts as well", () => {
    expect(
      judged({
        into: [
          [100, { left: true }],
          [200, {}],
        ],
        out: [
          [128, { left: true }],
          [290, { left: false }],
        ],
      }).figures.delay,
    ).toEqual({
      median: 90 * MS,
      worst: 90 * MS,
    });
  });

  // 250 ms: common practice, no source.
  test.each([
    [250, []],
    [251, ["serial/throughput"]],
  ])("a movement is %i ms on its way", (ms, told) => {
    expect(rules({ into: [[100, { x: 3 }]], out: [[100 + ms, { x: 3 }]] })).toEqual(told);
  });

  test("a limit that no document has is told without a source", () => {
    const { failures } = judged({ into: [[100, { x: 3 }]], out: [[400, { x: 3 }]] });
    expect(failures.map(({ rule, source }) => [rule, source])).toEqual([["serial/throughput", undefined]]);
  });
});

describe("what is to blame", () => {
  const lost = motion({
    into: [
      [100, { x: 5 }],
      [200, { x: 6 }],
      [300, { x: 7 }],
    ],
    out: [
      [140, { x: 5 }],
      [240, { x: 1 }],
      [340, { x: 2 }],
    ],
  });

  test("nothing that is known", () => {
    expect(faults(lost).map(([rule]) => rule)).toEqual(["report/counts-lost"]);
  });

  test.each(["glitch", "unplugged", "self-test"] as const)("a %s before", (kind) => {
    const mouse = { ...handMade({}).mouse, ...lost.mouse, happenings: [{ kind, time: 190 * MS }] };
    const { failures } = judgeRun(handMade({ ...lost, mouse }));
    expect(failures).toMatchObject([{ rule: "ps2/packet-resync", time: 190 * MS }]);
  });

  test("a disturbance that was survived is not", () => {
    const early = { kind: "glitch", time: 90 * MS } as const;
    const late = motion({
      into: [
        [100, { x: 5 }],
        [600, { x: 6 }],
        [900, { x: 7 }],
      ],
      out: [
        [140, { x: 5 }],
        [640, { x: 6 }],
        [940, { x: 2 }],
      ],
      ended: 2500,
    });
    const mouse = { ...handMade({}).mouse, ...late.mouse, happenings: [early] };
    expect(faults({ ...late, mouse }).map(([rule]) => rule)).toEqual(["report/counts-lost"]);
  });

  test("an edge of the clock that was missed, with the place that kept the firmware busy", () => {
    const observations = [{ kind: "edge-missed", time: 195 * MS, at: place(55) }] as const;
    const said = { ...lost, firmware: { observations, lastAt: undefined } };
    expect(faults(said)).toEqual([["ps2/clock-missed", 8, 55]]);
  });

  describe("an edge that was missed while a byte went to the PC", () => {
    const bytes = [{ from: 193 * MS, time: 200 * MS, value: 0x40, fault: undefined }];
    const pc = { ...handMade({}).pc, ...lost.pc, bytes };
    /** 0x40 with seven data bits at 1200 baud: 0 for seven bits, then 1. */
    const told = (runs: readonly [number | undefined, number | undefined], waitsForUart = false) =>
      faults({
        ...lost,
        pc,
        edges: [
          { time: 193 * MS, wire: "rxd", level: 0, cause: causeIn(runs[0]) },
          { time: 198.833 * MS, wire: "rxd", level: 1, cause: causeIn(runs[1]) },
        ],
        firmware: {
          observations: [{ kind: "edge-missed", time: 195 * MS, at: place(55), waitsForUart }],
          lastAt: undefined,
        },
      }).filter(([rule]) => rule !== "serial/bit-time");
    const causeIn = (run: number | undefined) =>
      ({ party: "firmware", at: place(70), ...(run === undefined ? {} : { run }) }) as const;

    test("that the code moves bit by bit: it was busy with it", () => {
      expect(told([0, 0])).toEqual([["serial/blocks-receive", 8, 55]]);
    });

    test("that one run of a handler moves bit by bit", () => {
      expect(told([7, 7])).toEqual([["serial/blocks-receive", 8, 55]]);
    });

    test("for each bit of which a timer calls a handler: something else kept the code busy", () => {
      expect(told([7, 9])).toEqual([["ps2/clock-missed", 8, 55]]);
    });

    test("that a UART sends by itself", () => {
      expect(told([undefined, undefined])).toEqual([["ps2/clock-missed", 8, 55]]);
    });

    test("for whose end the code waits", () => {
      expect(told([undefined, undefined], true)).toEqual([["serial/blocks-receive", 8, 55]]);
    });
  });
});

describe("a firmware that stands still", () => {
  test("reports come in and none goes out for more than a second", () => {
    const said = motion({
      into: [
        [100, { x: 5 }],
        [200, { x: 5 }],
      ],
      out: [[140, { x: 5 }]],
      ended: 3000,
    });
    const edges = [
      { time: 130 * MS, wire: "rxd", level: 1, cause: { party: "firmware", at: undefined } },
    ] as const;
    const firmware = { observations: [], lastAt: place(33) };
    expect(faults({ ...said, edges, firmware })).toEqual([["ps2/wait-forever", 2.87, 33]]);
  });

  test("it never did anything", () => {
    const answers = [{ asked: 600 * MS, ended: 800 * MS, bytes: [], outcome: "silent" }] as const;
    expect(faults({ ended: 3000 * MS, pc: { ...handMade({}).pc, answers } }).map(([rule]) => rule)).toEqual([
      "ps2/wait-forever",
    ]);
  });
});

describe("reports without news", () => {
  const flood = (every: number): Partial<Run> =>
    motion({
      into: [[100, { x: 5 }]],
      out: [[140, { x: 5 }], ...Array.from({ length: 20 }, (_, index): At => [200 + index * every, {}])],
      ended: 1000,
    });

  test("fill the line", () => {
    // 20 in a second: less than half of 44.4, which is what fits (mouse(4): 1200 bit/s, three bytes of nine bits).
    expect(faults(flood(30))).toEqual([]);
    const more = flood(25);
    const reports = [
      ...(more.pc?.reports ?? []),
      ...Array.from({ length: 5 }, (_, index) => outOf([800 + index * 25, {}])),
    ];
    expect(
      faults({ ...more, pc: { ...handMade({}).pc, ...more.pc, reports } }).map(([rule]) => rule),
    ).toEqual(["serial/throughput"]);
  });
});

test("bytes that were lost are counted", () => {
  const pc = {
    ...handMade({}).pc,
    bytes: [
      { from: 1 * MS, time: 8 * MS, value: 3, fault: undefined },
      { from: 20 * MS, time: 28 * MS, value: 3, fault: "framing" },
    ],
    discarded: [{ time: 8 * MS, bytes: [3, 4], why: "no first byte" }],
  } as const;
  expect(judgeRun(handMade({ pc })).figures.bytes).toEqual({ received: 2, framingErrors: 1, discarded: 2 });
});

describe("threads", () => {
  const threads = (said: Motion) =>
    threadsOf(handMade(motion(said))).map(({ incoming, outgoing }) => [incoming, outgoing]);

  test("lead from every report with news to the one that brought it", () => {
    expect(
      threads({
        into: [
          [100, { x: 5 }],
          [110, { x: 3, y: 2 }],
          // Nothing new.
          [120, {}],
          [200, { left: true }],
          [300, { x: 1, left: false }],
        ],
        out: [
          [140, { x: 8, y: -2 }],
          [240, { left: true }],
          [340, { x: 1 }],
        ],
      }),
    ).toEqual([
      [0, 0],
      [1, 0],
      [3, 1],
      [4, 2],
    ]);
  });

  // Auxiliary Device and System Timings: data is read while the clock is low, so that the last bit is known before its pulse ends.
  test("lead to a report that began in the last pulse of the clock, and not to a later one with the same sums", () => {
    const said: Motion = {
      into: [
        [100, { x: 1 }],
        [300, { x: -1 }],
        [500, { x: 1 }],
      ],
      out: [
        [122.45, { x: 1 }],
        [322.45, { x: -1 }],
        [522.45, { x: 1 }],
      ],
    };
    expect(threads(said)).toEqual([
      [0, 0],
      [1, 1],
      [2, 2],
    ]);
    expect(judged(said).failures).toEqual([]);
  });

  test("end where counts are lost", () => {
    const into: readonly At[] = [
      [100, { x: 5 }],
      [200, { x: 6 }],
    ];
    expect(
      threads({
        into,
        out: [
          [140, { x: 5 }],
          [240, { x: 4 }],
        ],
      }),
    ).toEqual([[0, 0]]);
  });
});
