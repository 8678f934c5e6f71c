import { commands, type Disposable } from "vscode";
import type { Checker } from "./checker.ts";
import { ExplainPages } from "./explain-pages.ts";
import { LensCommands } from "./lens-commands.ts";

/** The commands of package.json. */
export function registerCommands(checker: Checker): readonly Disposable[] {
  const pages = new ExplainPages(checker);
  return [
    commands.registerCommand("edgewise.showLog", () => checker.log.show()),
    commands.registerCommand("edgewise.restart", () => checker.restart()),
    pages,
    new LensCommands(checker),
    commands.registerCommand("edgewise.explain", (term?: unknown) => pages.ask(term)),
  ];
}
