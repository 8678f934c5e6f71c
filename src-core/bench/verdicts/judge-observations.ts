import type { Run } from "../run-record.ts";
import type { FindingsOfRun } from "./findings.ts";

/** What only the engine saw, and what the wires complained of. An edge that was missed is told where counts are lost. */
export function judgeObservations({ firmware, conflicts }: Run, findings: FindingsOfRun): void {
  for (const { kind, time, at } of firmware.observations) {
    if (kind === "torn-access") {
      const message =
        "an interrupt changes the variable between its bytes: read and write it with interrupts off";
      findings.fail({ rule: "board/shared-not-atomic", message, time, at });
    } else if (kind === "sampled-wrong") {
      const message = "the data line is read while the mouse may change it: read it while the clock is low";
      findings.fail({ rule: "ps2/sample-edge", message, time, at });
    }
  }
  for (const { time, wire, kind, cause } of conflicts) {
    const against = kind === "fight" ? " against somebody who pulls it low" : "";
    findings.fail({
      rule: "ps2/line-driven-high",
      message: `${wire} is driven high${against}: it may only be pulled low or let go`,
      time,
      at: cause.at,
    });
  }
}
