import type { MouseProfile } from "../../../../src-core/bench/mice/profile.ts";
import { mouseNamed } from "../../../../src-core/bench/mice/profiles.ts";
import { VirtualMouse } from "../../../../src-core/bench/mice/virtual-mouse.ts";
import { EventQueue } from "../../../../src-core/bench/time/event-queue.ts";
import { ms, us } from "../../../../src-core/bench/time/time.ts";
import type { Edge } from "../../../../src-core/bench/wires/edge.ts";
import { createWires, type Wires } from "../../../../src-core/bench/wires/wires.ts";
import { DatasheetHost, type SendOptions } from "./datasheet-host.ts";

/** A mouse and a host on two wires. */
export interface Desk {
  readonly queue: EventQueue;
  readonly wires: Wires;
  readonly mouse: VirtualMouse;
  readonly host: DatasheetHost;
  /** Lets so many milliseconds pass. */
  pass(milliseconds: number): void;
  /** Sends a byte and gives back what came in the next 60 ms: more than the 25 ms in which a mouse answers. */
  ask(byte: number, options?: SendOptions): readonly number[];
  /** Sends one after the other and gives back all answers. */
  askAll(bytes: readonly number[]): readonly number[];
}

/** The wires rise in a microsecond. The mouse has power from the first moment, but has not started. */
export function desk(mouse: string | MouseProfile, seed = 1): Desk {
  const profile = typeof mouse === "string" ? mouseNamed(mouse) : mouse;
  if (profile === undefined) throw new Error(`no mouse ${String(mouse)}`);
  const queue = new EventQueue();
  const wires = createWires(queue, us);
  const host = new DatasheetHost(queue, wires);
  const virtual = new VirtualMouse(profile, queue, wires, seed);
  const pass = (milliseconds: number) => queue.advanceTo(queue.now + Math.round(milliseconds * ms));
  const ask = (byte: number, options?: SendOptions) => {
    const before = host.heard.length;
    host.send(byte, options);
    pass(60);
    return host.bytes().slice(before);
  };
  const askAll = (bytes: readonly number[]) => bytes.flatMap((byte) => ask(byte));
  virtual.powerOn();
  return { queue, wires, mouse: virtual, host, pass, ask, askAll };
}

/** A desk whose mouse is ready for commands; what it said at power-on is forgotten. */
export function readyDesk(mouse: string | MouseProfile, seed = 1): Desk {
  const ready = desk(mouse, seed);
  ready.pass(3100);
  ready.host.forget();
  return ready;
}

export function hex(bytes: readonly number[]): string {
  return bytes.map((byte) => byte.toString(16).toUpperCase().padStart(2, "0")).join(" ");
}

/** Edges of one wire between two moments. */
export function edgesOf(wires: Wires, name: "clock" | "data", from: number, to: number): readonly Edge[] {
  return wires.edges.filter(({ wire, time }) => wire === name && time >= from && time <= to);
}
