import { parseArgs } from "node:util";
import { nearestNames } from "../../src-core/near-names.ts";
import { CannotDo } from "./cannot-do.ts";
import type { Arguments, Command, OptionDescription } from "./command.ts";

/** Splits what follows the command's name. Throws `CannotDo` for an option that is unknown or used wrongly. */
export function parseArguments(command: Command, rest: readonly string[]): Arguments {
  const known = new Map(command.options.map((option) => [option.name, option]));
  const { tokens } = parseArgs({
    args: [...rest],
    options: Object.fromEntries(
      command.options.map(({ name, value }) => [name, { type: value === undefined ? "boolean" : "string" }]),
    ),
    allowPositionals: true,
    strict: false,
    tokens: true,
  });
  const operands: string[] = [];
  const options = new Map<string, string>();
  for (const token of tokens) {
    if (token.kind === "positional") operands.push(token.value);
    if (token.kind !== "option") continue;
    const option = known.get(token.name);
    if (option === undefined) throw new CannotDo(unknownOption(token.rawName, command));
    options.set(option.name, valueGiven(option, token.value));
  }
  return { operands, options };
}

function valueGiven(option: OptionDescription, value: string | undefined): string {
  if (option.value === undefined) {
    if (value !== undefined) throw new CannotDo(`--${option.name} takes no value, but was given "${value}"`);
    return "";
  }
  if (value === undefined || value === "" || value.startsWith("--")) {
    throw new CannotDo(`--${option.name} needs a value: --${option.name} ${option.value}`);
  }
  return value;
}

function unknownOption(rawName: string, command: Command): string {
  const names = command.options.map((option) => `--${option.name}`);
  const [near] = nearestNames(rawName, names, 1);
  const hint = near === undefined ? `it takes ${names.join(", ")}` : `did you mean ${near}?`;
  return `${command.name} has no option ${rawName}; ${hint}`;
}
