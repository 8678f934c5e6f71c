import type { Confidence, Source } from "./sources.ts";

/** What follows the command byte. */
export type CommandArgument = "none" | "sample-rate" | "resolution";

/** One part of what the mouse sends back, in order. */
export type ReplyPart =
  | "acknowledge"
  | "self-test-passed"
  | "id"
  | "movement-report"
  | "status-packet"
  | "last-packet";

export type CommandName =
  | "reset"
  | "resend"
  | "set defaults"
  | "disable reporting"
  | "enable reporting"
  | "set sample rate"
  | "get device id"
  | "set remote mode"
  | "set wrap mode"
  | "reset wrap mode"
  | "read data"
  | "set stream mode"
  | "status request"
  | "set resolution"
  | "set scaling 2:1"
  | "set scaling 1:1";

export interface Command {
  readonly code: number;
  readonly name: CommandName;
  readonly argument: CommandArgument;
  /** To the command byte; an argument is acknowledged by itself as well. */
  readonly replies: readonly ReplyPart[];
  readonly meaning: string;
  readonly sources: readonly Source[];
  readonly confidence: Confidence;
}

const chipTable: Source = { document: "em84502", place: "section E, command table" };
const designManual: Source = { document: "adnk5023", place: "p. 9, App. F" };
const both: readonly Source[] = [chipTable, designManual];

/** The sixteen commands of a PS/2 mouse, from the highest code down. */
export const commands: readonly Command[] = [
  {
    code: 0xff,
    name: "reset",
    argument: "none",
    replies: ["acknowledge", "self-test-passed", "id"],
    meaning: "The mouse tests itself and goes back to its defaults; reporting is off afterwards.",
    sources: both,
    confidence: "read",
  },
  {
    code: 0xfe,
    name: "resend",
    argument: "none",
    replies: ["last-packet"],
    meaning: "The mouse repeats its last transmission, without an acknowledge before it.",
    sources: [{ document: "em84502", place: "section E, command table (xx,(xx,xx))" }],
    confidence: "read",
  },
  {
    code: 0xf6,
    name: "set defaults",
    argument: "none",
    replies: ["acknowledge"],
    meaning: "The mouse goes back to its defaults without a self-test; reporting is off afterwards.",
    sources: both,
    confidence: "read",
  },
  {
    code: 0xf5,
    name: "disable reporting",
    argument: "none",
    replies: ["acknowledge"],
    meaning: "In stream mode the mouse sends no more reports.",
    sources: both,
    confidence: "read",
  },
  {
    code: 0xf4,
    name: "enable reporting",
    argument: "none",
    replies: ["acknowledge"],
    meaning:
      "In stream mode the mouse sends reports from now on; without it a mouse stays silent after a reset.",
    sources: both,
    confidence: "read",
  },
  {
    code: 0xf3,
    name: "set sample rate",
    argument: "sample-rate",
    replies: ["acknowledge"],
    meaning: "The next byte is the number of reports per second that the mouse sends at most.",
    sources: both,
    confidence: "read",
  },
  {
    code: 0xf2,
    name: "get device id",
    argument: "none",
    replies: ["acknowledge", "id"],
    meaning: "The mouse answers 00 (plain), 03 (wheel) or 04 (five buttons).",
    sources: [
      chipTable,
      { document: "ht82m35x", place: "p. 3" },
      { document: "libps2Source", place: "get id" },
    ],
    confidence: "read",
  },
  {
    code: 0xf0,
    name: "set remote mode",
    argument: "none",
    replies: ["acknowledge"],
    meaning: "The mouse reports only when it is asked with EB.",
    sources: both,
    confidence: "read",
  },
  {
    code: 0xee,
    name: "set wrap mode",
    argument: "none",
    replies: ["acknowledge"],
    meaning: "The mouse echoes every byte except EC and FF.",
    sources: both,
    confidence: "read",
  },
  {
    code: 0xec,
    name: "reset wrap mode",
    argument: "none",
    replies: ["acknowledge"],
    meaning: "The mouse goes back to the mode it had before wrap mode.",
    sources: both,
    confidence: "read",
  },
  {
    code: 0xeb,
    name: "read data",
    argument: "none",
    replies: ["acknowledge", "movement-report"],
    meaning: "The mouse sends one movement report.",
    sources: both,
    confidence: "read",
  },
  {
    code: 0xea,
    name: "set stream mode",
    argument: "none",
    replies: ["acknowledge"],
    meaning: "The mouse reports by itself whenever it moves, once reporting is enabled.",
    sources: both,
    confidence: "read",
  },
  {
    code: 0xe9,
    name: "status request",
    argument: "none",
    replies: ["acknowledge", "status-packet"],
    meaning: "The mouse sends three bytes: mode and buttons, resolution code, sample rate.",
    sources: both,
    confidence: "read",
  },
  {
    code: 0xe8,
    name: "set resolution",
    argument: "resolution",
    replies: ["acknowledge"],
    meaning: "The next byte is 0, 1, 2 or 3 for 1, 2, 4 or 8 counts per millimetre.",
    sources: both,
    confidence: "read",
  },
  {
    code: 0xe7,
    name: "set scaling 2:1",
    argument: "none",
    replies: ["acknowledge"],
    meaning: "In stream mode the mouse enlarges fast movements.",
    sources: both,
    confidence: "read",
  },
  {
    code: 0xe6,
    name: "set scaling 1:1",
    argument: "none",
    replies: ["acknowledge"],
    meaning: "The mouse reports movements as they are.",
    sources: both,
    confidence: "read",
  },
];

const byCode: ReadonlyMap<number, Command> = new Map(commands.map((each) => [each.code, each]));

/** The command of this code, 0 to 255. */
export function commandByCode(code: number): Command | undefined {
  return byCode.get(code);
}

/** The code of a command. */
export function codeOf(name: CommandName): number {
  const command = commands.find((each) => each.name === name);
  if (command === undefined) throw new Error(`no command ${name}`);
  return command.code;
}
