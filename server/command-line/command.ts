import type { ExitStatus } from "./exit-status.ts";

/** One option as the user writes it, without the dashes. */
export interface OptionDescription {
  readonly name: string;
  /** How the help names its value; undefined for an option without one. */
  readonly value: string | undefined;
  readonly help: string;
}

/** The arguments of a command after parsing: every option is one that the command describes. */
export interface Arguments {
  readonly operands: readonly string[];
  /** Option name to its value; an option without a value has "". The last one given counts. */
  readonly options: ReadonlyMap<string, string>;
}

/** What a command can reach of the process it runs in. */
export interface Surroundings {
  /** Absolute; relative paths start here. */
  readonly workingFolder: string;
  /** The terminal shows colours and the user has not declined them. */
  readonly colours: boolean;
  readonly stdout: (text: string) => void;
  readonly stderr: (text: string) => void;
  /** Standard error is a terminal, on which a line may be written over. */
  readonly showsProgress: boolean;
  /** Calls `listener` instead of ending the process when the user interrupts it, until what it gives is called. */
  readonly onInterrupt: (listener: () => void) => () => void;
}

export interface Command {
  readonly name: string;
  /** What follows the name in the usage line. */
  readonly operands: string;
  readonly summary: string;
  readonly options: readonly OptionDescription[];
  /** More for `--help`: lines without indentation. */
  readonly details: readonly string[];
  /** Throws `CannotDo` where it cannot. */
  run(given: Arguments, surroundings: Surroundings): Promise<ExitStatus>;
}
