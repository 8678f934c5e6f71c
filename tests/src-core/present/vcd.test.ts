import { describe, expect, test } from "vitest";
import type { Edge, WireName } from "../../../src-core/bench/wires/edge.ts";
import { vcdText } from "../../../src-core/present/vcd.ts";

const edge = (time: number, wire: WireName, level: 0 | 1): Edge => ({
  time,
  wire,
  level,
  cause: { party: "mouse", at: undefined },
});

// Put together by hand from IEEE 1364-2001, 18.2: declarations, the values at the start, changes under their times.
describe("a value change dump", () => {
  test("has the wires, their levels at the start, and every change under its time", () => {
    const text = vcdText({
      edges: [edge(5_000_000, "data", 0), edge(20_000_000, "clock", 0), edge(20_000_000, "rts", 0)],
      ended: 60_000_000,
    });
    const [declarations, changes] = text.split("$enddefinitions $end\n");
    expect(declarations).toContain("$timescale 1 ps $end");
    expect(declarations?.match(/\$var wire 1 (\S) (\w+) \$end/g)).toEqual([
      "$var wire 1 ! clock $end",
      '$var wire 1 " data $end',
      "$var wire 1 # rxd $end",
      "$var wire 1 % rts $end",
      "$var wire 1 & dtr $end",
    ]);
    expect(changes).toBe(
      `#0\n$dumpvars\n1!\n1"\n1#\n1%\n1&\n$end\n#5000000\n0"\n#20000000\n0!\n0%\n#60000000\n`,
    );
  });

  test("a wire whose first change is to 1 was 0", () => {
    expect(vcdText({ edges: [edge(7, "rxd", 1)], ended: 9 })).toContain("\n0#\n1%\n1&\n$end\n#7\n1#\n#9\n");
  });

  test("what the PC sends is there where it sent anything", () => {
    const text = vcdText({ edges: [edge(7, "txd", 0)], ended: 9 });
    expect(text).toContain("$var wire 1 $ txd $end\n");
    expect(text).toContain("\n1#\n1$\n1%\n1&\n$end\n#7\n0$\n#9\n");
  });

  test("a run without a change has its end", () => {
    expect(vcdText({ edges: [], ended: 1_000 })).toMatch(/\n\$end\n#1000\n$/);
  });

  test("times beyond a second are whole numbers without an exponent", () => {
    expect(vcdText({ edges: [edge(7_200_000_000_000_123, "clock", 0)], ended: 0 })).toContain(
      "#7200000000000123\n",
    );
  });
});
