import { commands, type Disposable, type Uri } from "vscode";
import type { Checker } from "./checker.ts";
import { ExplainPages } from "./explain-pages.ts";
import { LensCommands } from "./lens-commands.ts";
import { MatrixPanels } from "./matrix-panels.ts";
import { RibbonPanels } from "./ribbon-panels.ts";

/** The commands of package.json. */
export function registerCommands(checker: Checker, extension: Uri): readonly Disposable[] {
  const pages = new ExplainPages(checker);
  const ribbons = new RibbonPanels(checker, extension);
  const matrices = new MatrixPanels(checker, extension);
  return [
    commands.registerCommand("edgewise.showLog", () => checker.log.show()),
    commands.registerCommand("edgewise.restart", () => checker.restart()),
    pages,
    new LensCommands(checker),
    commands.registerCommand("edgewise.explain", (term?: unknown) => pages.ask(term)),
    ribbons,
    commands.registerCommand("edgewise.showRun", (wanted?: unknown) => ribbons.show(wanted)),
    matrices,
    commands.registerCommand("edgewise.showMatrix", () => matrices.show()),
  ];
}
