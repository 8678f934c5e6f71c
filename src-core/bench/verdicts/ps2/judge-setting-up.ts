import { plain } from "../../../figures.ts";
import type { Span } from "../../../finding.ts";
import { codeOf } from "../../../model/commands.ts";
import type { Observation, Run, RunMouse } from "../../run-record.ts";
import { figure } from "../../time/figures.ts";
import { second, type Time } from "../../time/time.ts";
import type { Edge } from "../../wires/edge.ts";
import type { FindingsOfRun } from "../findings.ts";
import { givenUpIn } from "./given-up.ts";

const RECOVERY = figure("ps2.recovery", "max");
/** Either makes the mouse tell what moved. */
const ASKS_FOR_REPORTS: readonly number[] = [codeOf("enable reporting"), codeOf("read data")];

/** Whether the mouse was made to report after every self-test, and knew that it is on a PS/2 port. */
export function judgeSettingUp(run: Run, findings: FindingsOfRun): void {
  const { mouse, ended, firmware } = run;
  for (const { kind, time } of mouse.happenings) {
    if (kind !== "chose-usb") continue;
    const held = heldLow(time, run);
    const otherwise = firmware.places?.receives ?? firmware.places?.main;
    const why =
      held === undefined
        ? "clock and data must be pulled up and high when it looks, right after power-up"
        : `the firmware pulls ${held.wire} low when it looks, right after power-up: send nothing before the mouse says that it is there, or its time for that is over`;
    const message = `the mouse took the port for USB: ${why}`;
    findings.fail({ rule: "ps2/no-pullup", message, time, at: held?.cause.at, otherwise });
  }
  for (const wait of waits(mouse, ended)) {
    if (wait.waited <= RECOVERY) continue;
    const misheard = misheardIn(wait, mouse, firmware.observations);
    if (misheard === undefined) judgeWait(wait, run, findings);
    else if (misheard.kind === "edge-missed") {
      const { time, at } = misheard;
      const message =
        "an edge of the mouse's clock was missed in its answer, and the mouse is not asked for reports";
      findings.fail({ rule: "ps2/clock-missed", message, time, at });
    }
  }
}

/** The edge with which the firmware pulled a line low that is low at this moment. */
function heldLow(moment: Time, { edges }: Run): Edge | undefined {
  return (["data", "clock"] as const)
    .map((name) => edges.findLast(({ wire, time }) => wire === name && time <= moment))
    .find((last) => last?.level === 0 && last.cause.party === "firmware");
}

/**
 * From a self-test to the firmware's asking for reports; further self-tests in between, whoever wanted them, not counted. Where
 * it never asks for any, they are: a firmware that resets the mouse again and again gets nowhere.
 */
interface Wait {
  readonly began: Time;
  readonly ready: Time;
  readonly waited: Time;
  /** Up to here it is looked for a wait that was given up: what comes later is the same over again. */
  readonly lookedAt: Time;
  readonly ended: boolean;
}

function waits(mouse: RunMouse, ended: Time): readonly Wait[] {
  const tests = mouse.happenings
    .filter(({ kind }) => kind === "self-test")
    .map(({ time, length = 0 }) => ({ from: time, to: Math.min(time + length, ended) }));
  const asked = mouse.received.filter(
    ({ byte, fault }) => fault === "none" && ASKS_FOR_REPORTS.includes(byte),
  );
  const found: Wait[] = [];
  let done: Time = Number.NEGATIVE_INFINITY;
  for (const first of tests) {
    if (first.from < done) continue;
    const until = asked.find(({ end }) => end >= first.to)?.end;
    done = until ?? ended;
    const within = tests.filter(({ from }) => from >= first.from && from < done);
    const testing = within.reduce((sum, { from, to }) => sum + Math.min(to, done) - from, 0);
    found.push({
      began: first.from,
      ready: first.to,
      waited: until === undefined ? done - first.to : done - first.from - testing,
      lookedAt: done - testing,
      ended: until !== undefined,
    });
  }
  return found;
}

/**
 * An answer to a command that the firmware did not read as it was: what it did not do then has that cause. What the mouse says
 * before it is spoken to nobody has to hear.
 */
function misheardIn(
  { began, ready, waited }: Wait,
  { received }: RunMouse,
  observations: readonly Observation[],
): Observation | undefined {
  const spoken = received.find(({ end }) => end >= began)?.end ?? Number.POSITIVE_INFINITY;
  return observations.find(
    ({ kind, time }) => kind !== "torn-access" && time > spoken && time <= Math.max(ready, began + waited),
  );
}

/** The call that sent what the mouse was told last: what is missing comes behind it. */
function lastCommand({ received }: RunMouse, { places }: Run["firmware"]): Span | undefined {
  if (places === undefined) return undefined;
  const { commands, main } = places;
  const last = received.at(-1)?.byte;
  const sends = (what: number | undefined) => commands.findLast(({ byte }) => byte === what);
  // A byte that the text does not tell may have been any.
  const call = sends(last) ?? sends(undefined) ?? commands.at(-1);
  return call?.span ?? main;
}

function judgeWait({ began, ready, waited, lookedAt, ended }: Wait, run: Run, findings: FindingsOfRun): void {
  const { mouse, firmware } = run;
  // The reset that made the mouse test itself came before.
  const from = mouse.received.findLast(({ end }) => end <= began)?.end ?? began;
  const givenUp = givenUpIn(run, from, lookedAt);
  if (givenUp !== undefined) {
    const { quantity, waited: given, rule, what, time, at } = givenUp;
    findings.measureTime(quantity, given, rule, what, time, at);
    return;
  }
  findings.fail({
    rule: "ps2/reporting-not-enabled",
    message: `the mouse tested itself and was not asked for reports ${ended ? `before ${plain(waited / second, 2)} s had passed` : "any more"}: set it up again within ${plain(RECOVERY / second, 2)} s`,
    time: ready,
    at: undefined,
    otherwise: lastCommand(mouse, firmware),
    measured: { value: waited / second, unit: "s" },
    limit: { atMost: RECOVERY / second, unit: "s" },
  });
}
