import { nearestNames } from "../../src-core/near-names.ts";
import { CannotDo } from "./cannot-do.ts";
import type { Command, Surroundings } from "./command.ts";
import { type ExitStatus, exitStatus } from "./exit-status.ts";
import { commandHelp, generalHelp } from "./help.ts";
import { parseArguments } from "./parse-arguments.ts";

/**
 * Runs one command line (without the program's name). What cannot be done is said in one line on stderr and
 * gives status 2.
 */
export async function runCommandLine(
  commands: readonly Command[],
  version: string,
  words: readonly string[],
  surroundings: Surroundings,
): Promise<ExitStatus> {
  try {
    return await dispatch(commands, version, words, surroundings);
  } catch (error) {
    if (!(error instanceof CannotDo)) throw error;
    surroundings.stderr(`edgewise: ${error.message.replace(/\s+/g, " ")}\n`);
    return exitStatus.cannotDo;
  }
}

async function dispatch(
  commands: readonly Command[],
  version: string,
  [first, ...rest]: readonly string[],
  surroundings: Surroundings,
): Promise<ExitStatus> {
  switch (first) {
    case "--help":
    case "-h":
      surroundings.stdout(generalHelp(commands));
      return exitStatus.clean;
    case "--version":
      surroundings.stdout(`${version}\n`);
      return exitStatus.clean;
    case undefined:
      throw new CannotDo(`no command given; try "edgewise check FOLDER" or "edgewise --help"`);
    default: {
      const command = commands.find(({ name }) => name === first);
      if (command === undefined) throw new CannotDo(unknownCommand(first, commands));
      if (rest.includes("--help") || rest.includes("-h")) {
        surroundings.stdout(commandHelp(command));
        return exitStatus.clean;
      }
      return command.run(parseArguments(command, rest), surroundings);
    }
  }
}

function unknownCommand(word: string, commands: readonly Command[]): string {
  const names = commands.map(({ name }) => name);
  const what = word.startsWith("-") ? `no option ${word} without a command` : `no command "${word}"`;
  const [near] = nearestNames(word, names, 1);
  return near === undefined ? `${what}; there is ${names.join(", ")}` : `${what}; did you mean "${near}"?`;
}
