import { commands, type Disposable } from "vscode";
import type { Checker } from "./checker.ts";

/** The commands of package.json. */
export function registerCommands(checker: Checker): readonly Disposable[] {
  return [
    commands.registerCommand("edgewise.showLog", () => checker.log.show()),
    commands.registerCommand("edgewise.restart", () => checker.restart()),
  ];
}
