import type { Command, OptionDescription } from "./command.ts";

/** The text of `edgewise --help`. */
export function generalHelp(commands: readonly Command[]): string {
  const rows = commands.map(({ name, operands, summary }): [string, string] => [
    `${name} ${operands}`,
    summary,
  ]);
  return `Edgewise checks the firmware of adapters from a PS/2 mouse to a serial port.

Usage:
${table(rows.map(([left, right]) => [`edgewise ${left}`, right]))}

${table([
  ["edgewise COMMAND --help", "more about one command"],
  ["edgewise --version", "the version"],
])}
`;
}

/** The text of `edgewise COMMAND --help`. */
export function commandHelp(command: Command): string {
  const parts = [`${command.summary}\n\nUsage:\n  edgewise ${command.name} ${command.operands}`.trimEnd()];
  if (command.options.length > 0) {
    parts.push(`Options:\n${table(command.options.map((option) => [optionInWords(option), option.help]))}`);
  }
  if (command.details.length > 0) parts.push(command.details.join("\n"));
  return `${parts.join("\n\n")}\n`;
}

function optionInWords({ name, value }: OptionDescription): string {
  return value === undefined ? `--${name}` : `--${name} ${value}`;
}

function table(rows: readonly (readonly [left: string, right: string])[]): string {
  const width = Math.max(...rows.map(([left]) => left.length));
  return rows.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`).join("\n");
}
