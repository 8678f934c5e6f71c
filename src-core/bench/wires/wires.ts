import type { EventQueue } from "../time/event-queue.ts";
import type { Time } from "../time/time.ts";
import { DrivenWire } from "./driven-wire.ts";
import type { Edge } from "./edge.ts";
import { OpenCollectorWire } from "./open-collector.ts";

/** Every wire of the bench, and all that happened on them. */
export interface Wires {
  readonly clock: OpenCollectorWire;
  readonly data: OpenCollectorWire;
  /** What the PC receives: reports. */
  readonly rxd: DrivenWire;
  /** What the PC sends. */
  readonly txd: DrivenWire;
  readonly rts: DrivenWire;
  readonly dtr: DrivenWire;
  /** In order of time. */
  readonly edges: readonly Edge[];
}

/** Wires at rest: PS/2 lines high, the serial line at mark, the PC's lines OFF. */
export function createWires(queue: EventQueue, riseTime: Time): Wires {
  const edges: Edge[] = [];
  const clock = new OpenCollectorWire("clock", queue, riseTime);
  const data = new OpenCollectorWire("data", queue, riseTime);
  const rxd = new DrivenWire("rxd", queue, 1);
  const txd = new DrivenWire("txd", queue, 1);
  const rts = new DrivenWire("rts", queue, 1);
  const dtr = new DrivenWire("dtr", queue, 1);
  for (const wire of [clock, data, rxd, txd, rts, dtr]) wire.onEdge((edge) => edges.push(edge));
  return { clock, data, rxd, txd, rts, dtr, edges };
}
