import { plain } from "../../../figures.ts";
import { codeOf } from "../../../model/commands.ts";
import type { Run } from "../../run-record.ts";
import { figure } from "../../time/figures.ts";
import { second, type Time } from "../../time/time.ts";
import type { FindingsOfRun } from "../findings.ts";

const RECOVERY = figure("ps2.recovery", "max");
/** Either makes the mouse tell what moved. */
const ASKS_FOR_REPORTS: readonly number[] = [codeOf("enable reporting"), codeOf("read data")];

/** Whether the mouse was made to report after every self-test, and knew that it is on a PS/2 port. */
export function judgeSettingUp({ mouse, ended }: Run, findings: FindingsOfRun): void {
  for (const { kind, time } of mouse.happenings) {
    if (kind !== "chose-usb") continue;
    findings.fail({
      rule: "ps2/no-pullup",
      message:
        "the mouse took the port for USB: clock and data must be pulled up and high when it looks, right after power-up",
      time,
      at: undefined,
    });
  }
  const tests = mouse.happenings.filter(({ kind }) => kind === "self-test");
  for (const [index, { time, length = 0 }] of tests.entries()) {
    const ready = time + length;
    const until = tests[index + 1]?.time ?? ended;
    const asked = mouse.received.find(
      ({ end, byte, fault }) =>
        end >= ready && end <= until && fault === "none" && ASKS_FOR_REPORTS.includes(byte),
    );
    const waited: Time = (asked?.end ?? until) - ready;
    if (waited <= RECOVERY) continue;
    findings.fail({
      rule: "ps2/reporting-not-enabled",
      message: `the mouse tested itself and was not asked for reports ${asked === undefined ? "any more" : `before ${plain(waited / second, 2)} s had passed`}: set it up again within ${plain(RECOVERY / second, 2)} s`,
      time: ready,
      at: undefined,
      measured: { value: waited / second, unit: "s" },
      limit: { atMost: RECOVERY / second, unit: "s" },
    });
  }
}
