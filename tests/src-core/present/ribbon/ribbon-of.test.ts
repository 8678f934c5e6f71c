import { describe, expect, test } from "vitest";
import { bytesText } from "../../../../src-core/figures.ts";
import type { Mark, Panel, TimeWindow } from "../../../../src-core/present/ribbon/ribbon.ts";
import { ribbonOf } from "../../../../src-core/present/ribbon/ribbon-of.ts";
import { ribbonAsSvg } from "../../../../src-core/present/svg/ribbon-as-svg.ts";
import type { SimulatedRun } from "../../../../src-core/simulation-result.ts";
import { linesOf, runOf, sampleFiles } from "../../service/sample-run.ts";

const files = sampleFiles("ferry-c");
const run = runOf(files, { stroke: "all-at-once" });

function layout(of: SimulatedRun, window?: TimeWindow, sources = files) {
  return ribbonOf("quay", of, linesOf(sources), { columns: 1400, perTick: 90 }, window);
}

function marks(panel: Panel | undefined, lane: string, label: string): readonly Mark[] {
  const row = panel?.lanes
    .find(({ id }) => id === lane)
    ?.rows.find((each) => each.label === label && each.kind === "marks");
  if (row?.kind !== "marks") throw new Error(`no row ${label} in ${lane}`);
  return row.marks;
}

/** Bytes at the beginning of what is written. */
const hexOf = ({ detail }: Mark): string => detail.slice(0, 2);

describe("the ribbon of a run", () => {
  const { details } = run;
  const { panels, title, passed, description, faults, paths, figures } = layout(run);

  test("shows the whole run and the slowest report at close range", () => {
    expect(title).toBe("quay: stroke all-at-once, mouse plain, PC rts-toggle");
    expect(passed).toBe(true);
    expect(faults).toEqual([]);
    expect(panels.map((panel) => panel.title)).toEqual([
      "The whole run",
      expect.stringMatching(/^Close up: the slowest report, [\d.]+ ms on its way$/),
    ]);
    expect(panels[0]).toMatchObject({ from: 0, to: run.ended });
    expect(description).toMatch(/^The run passed\. stroke: all-at-once.* x: \d+ counts in, \d+ out\./);
    expect(paths.sent).toEqual(run.sent);
    expect(figures.map(([label]) => label)).toContain("delay");
  });

  test("a window has every byte of it, decoded as the run has them", () => {
    const [first] = details.frames.filter(({ sender }) => sender === "host");
    const from = (first?.from ?? 0) - 1e9;
    const window = { from, to: from + 30e9 };
    const [panel] = layout(run, window).panels;
    for (const [sender, label] of [
      ["host", "to the mouse"],
      ["mouse", "from the mouse"],
    ] as const) {
      const wanted = details.frames.filter(
        (frame) => frame.sender === sender && frame.to >= window.from && frame.from <= window.to,
      );
      const shown = marks(panel, "mouse", label);
      expect(shown.map((mark) => [hexOf(mark), mark.from, mark.to])).toEqual(
        wanted.map(({ byte, from: a, to: b }) => [bytesText([byte]), a, b]),
      );
      expect(shown.map(({ texts }) => texts[0])).toEqual(
        wanted.map(({ byte, meaning }) => `${bytesText([byte])} ${meaning}`),
      );
    }
  });

  test("its close-up has the reports, and the thread between them", () => {
    const panel = panels[1];
    const slowest = panel?.threads.filter(({ isSlowest }) => isSlowest);
    expect(slowest).toHaveLength(1);
    const outgoing = marks(panel, "pc", "reports").find(({ from }) => from === slowest?.[0]?.outgoing.from);
    const incoming = marks(panel, "mouse", "reports").find(({ to }) => to === slowest?.[0]?.incoming.to);
    expect(incoming?.to).toBeLessThan(outgoing?.to ?? 0);
    const bytes = marks(panel, "pc", "bytes").filter(
      ({ from, to }) => from >= (outgoing?.from ?? 0) && to <= (outgoing?.to ?? 0),
    );
    expect(bytes).toHaveLength(3);
    expect(outgoing?.detail).toContain(bytes.map(hexOf).join(" "));
  });

  test("the lanes are those of the mouse, the code and the PC", () => {
    expect(panels.map(({ lanes }) => lanes.map(({ id }) => id))).toEqual([
      ["mouse", "code", "pc"],
      ["mouse", "code", "pc"],
    ]);
    const named = marks(panels[1], "code", "interrupts").map(({ texts }) => texts[0]);
    expect(named).toContain("INT0_vect");
  });

  test("is laid out for the room there is, not for the length of the run", () => {
    for (const { lanes, threads } of panels) {
      for (const row of lanes.flatMap(({ rows }) => rows)) {
        expect(row.kind === "wire" ? row.stretches.length : row.marks.length).toBeLessThanOrEqual(2 * 1400);
      }
      expect(threads.length).toBeLessThanOrEqual(details.threads.length);
    }
  });
});

test("what the PC sends has a row where it sends anything", () => {
  const rowsOf = (of: SimulatedRun) =>
    layout(of).panels[0]?.lanes.flatMap(({ id, rows }) => (id === "pc" ? rows : []));
  expect(rowsOf(run)?.map(({ label }) => label)).not.toContain("txd");
  const level = (time: number, to: 0 | 1) =>
    ({ time, wire: "txd", level: to, by: "pc", place: undefined }) as const;
  const { details } = run;
  const speaks = { ...details, edges: [level(5e9, 0), level(10e9, 1), ...details.edges] };
  const row = rowsOf({ ...run, details: speaks })?.find(({ label }) => label === "txd");
  expect(row?.kind === "wire" && row.stretches.map(({ level: at, to }) => [at, to])).toEqual([
    [1, 5e9],
    [0, 10e9],
    [1, run.ended],
  ]);
});

describe("a run with faults", () => {
  const sources = sampleFiles("ferry-c-faults");
  const faulty = runOf(sources, { stroke: "nudge" });
  const { panels, faults, description, passed } = layout(faulty, undefined, sources);

  test("numbers them, flags them where they were first seen, and shows the first at close range", () => {
    expect(passed).toBe(false);
    expect(faults.map(({ number }) => number)).toEqual(faulty.verdict.failures.map((_, index) => index + 1));
    expect(panels[0]?.flags.flatMap(({ numbers }) => numbers)).toEqual(faults.map(({ number }) => number));
    expect(panels[1]?.title).toBe("Close up: where fault 1 was first seen");
    // Others that were seen right behind it share its flag.
    const [first] = panels[1]?.flags ?? [];
    expect(first?.time).toBe(faulty.verdict.failures[0]?.time);
    expect(first?.numbers[0]).toBe(1);
    expect(faults[0]?.place?.file).toBe("ps2.c");
    expect(description).toContain("The run failed.");
    expect(description).toContain("[ps2/request-hold-short]");
  });
});

test("code that stopped is the last fault", () => {
  const sources = {
    "main.c": "#include <avr/io.h>\nint main(void) { DDRD |= 2; return 0; }",
    "edgewise.json": files["edgewise.json"] ?? "",
  };
  const { faults } = layout(runOf(sources), undefined, sources);
  expect(faults.at(-1)?.message).toBe("the code stopped: `main` returned: the code does nothing more");
});

/** A run as long as it may be: every edge and every report of the sample's over and over. */
function repeated(of: SimulatedRun, times: number): SimulatedRun {
  const { details, ended } = of;
  const later = <
    Each extends { readonly from?: number; readonly to?: number | undefined; readonly time?: number },
  >(
    list: readonly Each[],
  ): readonly Each[] =>
    Array.from({ length: times }, (_, turn) =>
      list.map((each) => ({
        ...each,
        ...(each.time === undefined ? {} : { time: each.time + turn * ended }),
        ...(each.from === undefined ? {} : { from: each.from + turn * ended }),
        ...(each.to === undefined ? {} : { to: each.to + turn * ended }),
      })),
    ).flat();
  const many = details.threads.flatMap(({ incoming, outgoing }) =>
    Array.from({ length: times }, (_, turn) => ({
      incoming: incoming + turn * details.incoming.length,
      outgoing: outgoing + turn * details.outgoing.length,
    })),
  );
  return {
    ...of,
    ended: ended * times,
    details: {
      ...details,
      edges: later(details.edges),
      frames: later(details.frames),
      incoming: later(details.incoming),
      outgoing: later(details.outgoing),
      serialBytes: later(details.serialBytes),
      threads: many,
      code: { ...details.code, spans: later(details.code.spans) },
    },
  };
}

test("a run of a hundred thousand edges is as large a picture as a short one", () => {
  const long = repeated(run, Math.ceil(100_000 / run.details.edges.length));
  expect(long.details.edges.length).toBeGreaterThanOrEqual(100_000);
  const svg = ribbonAsSvg(layout(long));
  expect(svg.length).toBeLessThan(1_500_000);
});
