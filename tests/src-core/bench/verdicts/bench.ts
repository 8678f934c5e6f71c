import { mouseNamed } from "../../../../src-core/bench/mice/profiles.ts";
import { VirtualMouse } from "../../../../src-core/bench/mice/virtual-mouse.ts";
import { Pc } from "../../../../src-core/bench/pcs/pc.ts";
import { pcNamed } from "../../../../src-core/bench/pcs/pc-profiles.ts";
import { LayoutReceiver } from "../../../../src-core/bench/pcs/reports/layout-receiver.ts";
import type { Run } from "../../../../src-core/bench/run-record.ts";
import { type Stroke, strokeLength } from "../../../../src-core/bench/strokes/stroke.ts";
import { sampleStrokes } from "../../../../src-core/bench/strokes/strokes.ts";
import { EventQueue } from "../../../../src-core/bench/time/event-queue.ts";
import { createWires } from "../../../../src-core/bench/wires/wires.ts";
import { layouts } from "../../../../src-core/model/report-layouts.ts";
import { DatasheetHost } from "../mice/datasheet-host.ts";
import { type AdapterFaults, PaperAdapter } from "./paper-adapter.ts";

const MS = 1e9;

export interface BenchOptions {
  readonly mouse?: string;
  readonly pc?: string;
  /** Sample strokes by their names, or own ones. */
  readonly strokes?: readonly (string | Stroke)[];
  readonly faults?: AdapterFaults;
  /** From the end of the last stroke, in ms. */
  readonly restMs?: number;
}

/** A whole run: a mouse, the adapter on paper and a PC; strokes begin when all are ready, or after 8 s. */
export function benchRun(options: BenchOptions = {}): Run {
  const {
    mouse: mouseName = "plain",
    pc: pcName = "rts-toggle",
    strokes = ["circle"],
    restMs = 1500,
  } = options;
  const [profile, pcProfile] = [mouseNamed(mouseName), pcNamed(pcName)];
  if (profile === undefined || pcProfile === undefined) throw new Error(`${mouseName}, ${pcName}`);
  const queue = new EventQueue();
  const wires = createWires(queue, 1_000_000);
  const layout = layouts["two-button"];
  const receiver = new LayoutReceiver(layout);
  const mouse = new VirtualMouse(profile, queue, wires, 1);
  new PaperAdapter(queue, wires, new DatasheetHost(queue, wires), options.faults ?? {});
  const pc = new Pc({ queue, wires, profile: pcProfile, layout, receiver });
  mouse.powerOn();
  while (queue.now < 8000 * MS && !(pc.isListening && mouse.isStreaming))
    queue.advanceTo(queue.now + 10 * MS);
  for (const name of strokes) {
    const stroke = strokeNamed(name);
    mouse.perform(stroke);
    queue.advanceTo(queue.now + strokeLength(stroke));
  }
  queue.advanceTo(queue.now + restMs * MS);
  return {
    ended: queue.now,
    edges: wires.edges,
    conflicts: [...wires.clock.conflicts, ...wires.data.conflicts],
    mouse: mouse.record,
    pc: { ...pc.record, reports: receiver.reports, discarded: receiver.discarded },
    firmware: { observations: [], lastAt: undefined },
    wanted: { layout, baud: 1200, scale: 1 },
  };
}

function strokeNamed(name: string | Stroke): Stroke {
  if (typeof name !== "string") return name;
  const stroke = sampleStrokes.find((each) => each.name === name);
  if (stroke === undefined) throw new Error(`no stroke ${name}`);
  return stroke;
}
