import { plain } from "../../figures.ts";
import { buttonChanges } from "../pcs/reports/report-receiver.ts";
import type { Run } from "../run-record.ts";
import { figure } from "../time/figures.ts";
import { second, type Time } from "../time/time.ts";
import type { Edge } from "../wires/edge.ts";
import type { FindingsOfRun } from "./findings.ts";
import { axesOf } from "./motion/axes.ts";
import { incomingReports } from "./motion/incoming.ts";

/** A loop that waits has no more places than these: a condition, and what it calls; our own choice. */
const WAITING_PLACES = 3;
/** So long the firmware may be silent although it is spoken to: the longest that it may wait for the mouse. */
const PATIENCE = figure("ps2.reset-wait", "min");

/**
 * The firmware never did anything, or does nothing any more although what the mouse says has to go to the PC. Tells whether it
 * is so. A firmware that does not answer the PC may be doing well otherwise: that is told by the identification.
 */
export function judgeStandstill(run: Run, findings: FindingsOfRun): boolean {
  const { edges, ended, firmware } = run;
  const last = edges.findLast(({ cause }) => cause.party === "firmware");
  const since: Time = last?.time ?? 0;
  if (ended - since <= PATIENCE || isAbout(firmware, since)) return false;
  const isWanted =
    last === undefined ? isAsked(run) : keepsQuiet(edges) || isTold(run, since) || isAmidSettingUp(run);
  if (!isWanted) return false;
  findings.fail({
    rule: "ps2/wait-forever",
    message:
      last === undefined
        ? "the firmware never does anything on any wire, although the mouse or the PC speaks to it"
        : `from ${plain(since / second, 3)} s on the firmware does nothing any more, although it is not done with the mouse`,
    time: since,
    at: firmware.lastAt ?? last?.cause.at,
    otherwise: firmware.places?.main,
    measured: { value: (ended - since) / second, unit: "s" },
    limit: { atMost: PATIENCE / second, unit: "s" },
  });
  return true;
}

/** The code is here and there: it does not wait for something that never comes. */
function isAbout({ whereabouts = [] }: Run["firmware"], since: Time): boolean {
  const places = new Set(whereabouts.filter(({ time }) => time > since).map(({ at }) => at));
  return places.size > WAITING_PLACES;
}

function isAsked({ mouse, pc, ended }: Run): boolean {
  return [...mouse.sent.map(({ end }) => end), ...pc.answers.map(({ asked }) => asked)].some(
    (time) => ended - time > PATIENCE,
  );
}

/** It waits in one place, and the mouse was not told all that the code has for it. */
function isAmidSettingUp({ firmware: { places, whereabouts = [] }, mouse }: Run): boolean {
  const last = places?.commands.findLast(({ byte }) => byte !== undefined);
  return whereabouts.length > 0 && last !== undefined && mouse.received.at(-1)?.byte !== last.byte;
}

/** The mouse cannot say anything. */
function keepsQuiet(edges: readonly Edge[]): boolean {
  const last = edges.findLast(({ wire }) => wire === "clock");
  return last?.level === 0 && last.cause.party === "firmware";
}

/** While the PC listens, a report comes that says something which the layout carries. */
function isTold({ mouse, pc, edges, wanted, ended }: Run, since: Time): boolean {
  const axes = axesOf(wanted.layout);
  const reports = incomingReports(mouse, edges);
  const changed = new Set(
    buttonChanges(reports).flatMap(({ button, time }) =>
      wanted.layout.fields.includes(button) ? [time] : [],
    ),
  );
  const isListening = (time: Time): boolean =>
    pc.sessions.some(({ from, to }) => time > from && time < (to ?? ended));
  return reports.some(
    ({ time, values }) =>
      time > since &&
      ended - time > PATIENCE &&
      isListening(time) &&
      (changed.has(time) || axes.some(({ name }) => (values[name] ?? 0) !== 0)),
  );
}
