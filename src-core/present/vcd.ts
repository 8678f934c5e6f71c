import type { Time } from "../bench/time/time.ts";
import type { WireName } from "../bench/wires/edge.ts";
import { type LevelChange, levelAtStart } from "./levels.ts";

/** What of a run goes into a value change dump. */
export interface WireHistory {
  /** In order of time, in picoseconds. */
  readonly edges: readonly LevelChange[];
  /** When the run ended. */
  readonly ended: Time;
}

/** The wires in the order of viewers: the mouse's side, then the PC's. */
const WIRES: readonly WireName[] = ["clock", "data", "rxd", "txd", "rts", "dtr"];

/** Printable characters from `!` on name the wires: IEEE 1364-2001, 18.2.1. */
const codeOf = (wire: WireName): string => String.fromCharCode(0x21 + WIRES.indexOf(wire));

/**
 * All wires of a run as a four-state value change dump, IEEE 1364-2001, 18. No date is written, so that the same run gives the
 * same text. What the PC sends is there where it sent anything. A wire of the serial side is 1 at mark and OFF, as its voltage at the connector is low then.
 */
export function vcdText({ edges, ended }: WireHistory): string {
  // A PC seldom says anything.
  const wires = WIRES.filter((name) => name !== "txd" || edges.some(({ wire }) => wire === name));
  const lines = [
    "$version Edgewise $end",
    "$comment rxd and txd: 1 is mark, 0 is space; rts and dtr: 1 is OFF, 0 is ON $end",
    "$timescale 1 ps $end",
    "$scope module bench $end",
    ...wires.map((wire) => `$var wire 1 ${codeOf(wire)} ${wire} $end`),
    "$upscope $end",
    "$enddefinitions $end",
    "#0",
    "$dumpvars",
    ...wires.map((wire) => `${levelAtStart(wire, edges)}${codeOf(wire)}`),
    "$end",
  ];
  let now: Time = 0;
  for (const { time, wire, level } of edges) {
    if (time !== now) lines.push(`#${time}`);
    now = time;
    lines.push(`${level}${codeOf(wire)}`);
  }
  if (ended > now) lines.push(`#${ended}`);
  return `${lines.join("\n")}\n`;
}
