import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { EventQueue } from "../../../src-core/bench/time/event-queue.ts";
import { createWires } from "../../../src-core/bench/wires/wires.ts";
import { vcdText } from "../../../src-core/present/vcd.ts";
import { send } from "../../src-core/bench/pcs/sender.ts";

/**
 * Lets gtkwave's `vcd2fst` read a dump into its own binary form and `fst2vcd` write that out again: what comes back went
 * through a reader that is not ours.
 */
function readBack(text: string): string {
  const folder = mkdtempSync(join(tmpdir(), "edgewise-vcd-"));
  try {
    const [vcd, fst, again] = ["run.vcd", "run.fst", "again.vcd"].map((name) => join(folder, name));
    writeFileSync(vcd ?? "", text);
    for (const [command, from, to] of [
      ["vcd2fst", vcd, fst],
      ["fst2vcd", fst, again],
    ] as const) {
      const flags = command === "vcd2fst" ? [from ?? "", to ?? ""] : ["-f", from ?? "", "-o", to ?? ""];
      const { status, stderr, error } = spawnSync(command, flags, { encoding: "utf8" });
      if (status !== 0) throw new Error(`${command}: ${error?.message ?? stderr} (Debian package gtkwave)`);
    }
    return readFileSync(again ?? "", "utf8");
  } finally {
    rmSync(folder, { recursive: true });
  }
}

interface Dump {
  readonly timescale: string | undefined;
  /** `time wire level`, those of the start included, in order. */
  readonly changes: readonly string[];
  readonly last: number;
}

function parse(text: string): Dump {
  const names = new Map(
    [...text.matchAll(/\$var\s+\w+\s+1\s+(\S+)\s+(\S+)\s/g)].map(([, code, name]) => [code, name]),
  );
  const changes: string[] = [];
  let time = 0;
  for (const line of (text.split("$enddefinitions $end")[1] ?? "").split("\n")) {
    if (line.startsWith("#")) time = Number(line.slice(1));
    const change = /^([01xz])(\S+)$/.exec(line);
    if (change !== null) changes.push(`${time} ${names.get(change[2])} ${change[1]}`);
  }
  return { timescale: /\$timescale\s+(.*?)\s*\$end/s.exec(text)?.[1], changes, last: time };
}

test("gtkwave's tools read the same transitions", () => {
  const queue = new EventQueue();
  // A rise time of 1.234567 us: edges at every picosecond.
  const wires = createWires(queue, 1_234_567);
  const cause = { party: "mouse", at: undefined } as const;
  wires.clock.pullUp("mouse", true, cause);
  wires.data.pullUp("mouse", true, cause);
  for (let index = 0; index < 500; index++) {
    const wire = index % 3 === 0 ? wires.data : wires.clock;
    queue.at(1_000_003 * (40 + 41 * index), () =>
      wire.drive("mouse", index % 2 === 0 ? "low" : "released", cause),
    );
  }
  queue.at(300_000_000_007, () => wires.rts.drive(0, { party: "pc", at: undefined }));
  queue.at(300_000_000_007, () => wires.dtr.drive(0, { party: "pc", at: undefined }));
  send(queue, wires.rxd, 314_000_000_000, [0x4d, 0x40, 0x05, 0x03]);
  const ended = 500_000_000_000;
  queue.advanceTo(ended);

  const { timescale, changes, last } = parse(readBack(vcdText({ edges: wires.edges, ended })));
  const start = ["clock", "data", "rxd", "rts", "dtr"].map((wire) => `0 ${wire} 1`);
  const edges = wires.edges.map(({ time, wire, level }) => `${time} ${wire} ${level}`);
  expect(edges.length).toBeGreaterThan(300);
  expect(timescale).toMatch(/^1\s*ps$/);
  expect(changes.slice(0, start.length).toSorted()).toEqual(start.toSorted());
  expect(changes.slice(start.length).toSorted()).toEqual(edges.toSorted());
  expect(last).toBe(ended);
});
