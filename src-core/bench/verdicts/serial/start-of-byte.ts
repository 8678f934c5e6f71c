import type { At } from "../../../reader/typed/nodes.ts";
import type { Time } from "../../time/time.ts";
import type { Edge } from "../../wires/edge.ts";

/** Who pulled the line to space for the byte whose start bit was seen at a moment. */
export function startOfByte(edges: readonly Edge[], from: Time): At | undefined {
  return edges.findLast(({ wire, level, time }) => wire === "rxd" && level === 0 && time <= from)?.cause.at;
}
