import { figure, figureOf } from "../time/figures.ts";
import { ms, type Time } from "../time/time.ts";
import type { ControlLines, LineStep, PcProfile, Question } from "./pc-profile.ts";

const OFF: ControlLines = { dtr: false, rts: false };
const DTR_ALONE: ControlLines = { dtr: true, rts: false };
const ON: ControlLines = { dtr: true, rts: true };

/** By now an adapter that is fed by the port has to be up. */
const POWER_READY = figure("serial.power-ready", "max");
const RESET_HOLD = figure("serial.reset-hold", "typical");
const SHORTEST_RESET_HOLD = figure("serial.reset-hold", "min");
const LONGEST_RESET_HOLD = figure("serial.reset-hold", "max");

/** Opening a port turns both lines on, and a driver gets to them a little later. Common practice, no source. */
const opened = (time: Time): readonly LineStep[] => [{ ...ON, time }];

const patience = {
  firstCharacter: figure("pnp.first-character", "max"),
  nextCharacter: figure("pnp.character-timeout", "max"),
  whole: figure("pnp.id-time", "max"),
} as const;

const moreThanUsual = {
  firstCharacter: figureOf("mousedSource", "pnp.first-character", "max"),
  nextCharacter: figureOf("mousedSource", "pnp.character-timeout", "max"),
  whole: figure("pnp.id-time", "max"),
} as const;

/** Lines off for a time, then both on. */
const toggle = (off: ControlLines, time: Time): Question => ({
  steps: [{ ...off, time }],
  asking: ON,
  ...patience,
  reads: "usual",
});

const common = {
  startsAfter: POWER_READY,
  // A program that found no mouse leaves the lines as they are. Common practice, no source.
  unanswered: ON,
  asksAgainAfter: undefined,
  confidence: "read",
} as const;

/** Every virtual PC, the plainest first. DSR is taken to be tied to DTR, as the specification has it (2.3). */
export const pcProfiles: readonly PcProfile[] = [
  {
    ...common,
    name: "rts-toggle",
    title: "Turns RTS off and on again while DTR stays on.",
    opening: opened(RESET_HOLD),
    questions: [toggle(DTR_ALONE, RESET_HOLD)],
    sources: [
      { document: "mouseManual", place: "Introduction" },
      { document: "dosDriverProtocol", place: "identification" },
    ],
  },
  {
    ...common,
    name: "dtr-rts-toggle",
    title: "Turns DTR and RTS off together and on together, so that a mouse fed by the port loses its power.",
    opening: opened(RESET_HOLD),
    questions: [toggle(OFF, RESET_HOLD)],
    sources: [{ document: "kudzuSource", place: "probe sequence" }],
  },
  {
    ...common,
    name: "plug-and-play",
    title: "Enumerates the port: first with DTR before RTS, then with both at once, and reads the whole id.",
    opening: [],
    unanswered: DTR_ALONE,
    questions: [
      {
        steps: [
          { ...DTR_ALONE, time: figure("pnp.dsr-wait", "typical") },
          { ...OFF, time: figure("pnp.both-off", "typical") },
          { ...DTR_ALONE, time: figure("pnp.signature", "typical") },
        ],
        asking: ON,
        ...patience,
        reads: "whole",
      },
      {
        steps: [{ ...OFF, time: figure("pnp.both-off", "typical") }],
        asking: ON,
        ...patience,
        reads: "whole",
      },
    ],
    sources: [
      { document: "externalComSpecification", place: "2.1, Fig. 1" },
      { document: "serenumSample", place: "probe sequence" },
      { document: "reactosSerenum", place: "probe sequence" },
    ],
  },
  {
    ...common,
    name: "hurried",
    title: "Keeps RTS off for as short a time as any PC does, right after it opened the port.",
    opening: [],
    questions: [toggle(DTR_ALONE, SHORTEST_RESET_HOLD)],
    sources: [{ document: "reactosSerenum", place: "legacy probe (100 ms)" }],
  },
  {
    ...common,
    name: "patient",
    title: "Keeps both lines off long, and waits long for every character.",
    startsAfter: figure("ps2.reset-wait", "min"),
    opening: opened(LONGEST_RESET_HOLD),
    questions: [{ ...toggle(OFF, LONGEST_RESET_HOLD), ...moreThanUsual }],
    sources: [{ document: "mousedSource", place: "probe (240 ms)" }],
  },
  {
    ...common,
    name: "second-reset",
    title: "Resets the mouse once more while reports are coming, as when a second program opens the port.",
    opening: opened(RESET_HOLD),
    questions: [toggle(DTR_ALONE, RESET_HOLD)],
    // Our own choice: most strokes are still being made then.
    asksAgainAfter: 150 * ms,
    sources: [{ document: "mouseManual", place: "Introduction" }],
  },
];

/** The PC of this name, as `simulate` settings and the command line take it. */
export function pcNamed(name: string): PcProfile | undefined {
  return pcProfiles.find((each) => each.name === name);
}
