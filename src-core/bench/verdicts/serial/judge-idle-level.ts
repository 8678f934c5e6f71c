import { plain } from "../../../figures.ts";
import type { Run } from "../../run-record.ts";
import { ms, second, type Time } from "../../time/time.ts";
import type { Edge } from "../../wires/edge.ts";
import type { FindingsOfRun } from "../findings.ts";

/** The line rests at mark: space never lasts longer than the start bit and data bits of one byte, all of them space. */
export function judgeIdleLevel({ edges, ended, wanted }: Run, findings: FindingsOfRun): void {
  const bits = wanted.layout.dataBits + 1;
  // Twice the byte, so that a wrong rate is not taken for a wrong level.
  const most = (2 * bits * second) / wanted.baud;
  let began: Edge | undefined;
  const judge = (until: Time): void => {
    if (began === undefined || until - began.time <= most) return;
    const value = (until - began.time) / ms;
    findings.fail({
      rule: "serial/idle-level",
      message: `the serial line stays at space for ${plain(value, 1)} ms: between bytes it must rest at mark`,
      time: began.time,
      at: began.cause.at,
      measured: { value, unit: "ms" },
      limit: { atMost: most / ms, unit: "ms" },
    });
  };
  for (const edge of edges) {
    if (edge.wire !== "rxd") continue;
    judge(edge.time);
    began = edge.level === 0 ? edge : undefined;
  }
  judge(ended);
}
