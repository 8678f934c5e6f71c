import type { ReceivedByte } from "../../pcs/uart/received-byte.ts";
import type { Time } from "../../time/time.ts";
import type { Edge } from "../../wires/edge.ts";

/** What lies between two edges of a byte: one bit, or several of one level. */
export interface SerialBits {
  /** The edge that ends them, and who made it. */
  readonly end: Edge;
  /** Since the edge that began them. */
  readonly length: Time;
  /** How many bits they are, by where they end. */
  readonly bits: number;
  /** How much later than at the right rate the edge comes, counted from the start bit; negative where it comes too soon. */
  readonly late: Time;
  /** They begin with the start bit. */
  readonly isFirst: boolean;
}

/**
 * Every bit that lies between two edges, byte by byte; a stop bit has no second edge and is left out. `bit` is the right one,
 * `own` the line's.
 */
export function* serialBits(
  edges: readonly Edge[],
  bytes: readonly ReceivedByte[],
  { bit, own }: { readonly bit: Time; readonly own: Time },
  dataBits: number,
): Generator<SerialBits> {
  const line = edges.filter(({ wire }) => wire === "rxd");
  let next = 0;
  for (const { from } of bytes) {
    // The receiver saw the start bit with the first sample behind its edge.
    while (next < line.length && startsBefore(line[next], line[next + 1], from)) next += 1;
    const start = line[next];
    if (start === undefined) return;
    let begun = start.time;
    let done = 0;
    for (next += 1; next < line.length; next += 1) {
      const end = line[next];
      if (end === undefined || end.time - start.time > (dataBits + 1.5) * own) break;
      const at = Math.max(done + 1, Math.round((end.time - start.time) / own));
      const late = end.time - start.time - at * bit;
      yield { end, length: end.time - begun, bits: at - done, late, isFirst: done === 0 };
      begun = end.time;
      done = at;
    }
  }
}

/** A later edge is the one that the receiver saw. */
function startsBefore(edge: Edge | undefined, following: Edge | undefined, from: Time): boolean {
  if (edge?.level !== 0) return true;
  return following !== undefined && following.time <= from;
}
