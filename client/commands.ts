import { commands, type Disposable, type ExtensionContext } from "vscode";
import type { Checker } from "./checker.ts";
import { ExplainPages } from "./explain-pages.ts";
import { openWalkthrough } from "./first-run.ts";
import { LensCommands } from "./lens-commands.ts";
import { MatrixPanels } from "./matrix-panels.ts";
import { RibbonPanels } from "./ribbon-panels.ts";
import { openSampleWorkspace } from "./sample-workspace.ts";

/** The commands of package.json. */
export function registerCommands(context: ExtensionContext, checker: Checker): readonly Disposable[] {
  const pages = new ExplainPages(checker);
  const ribbons = new RibbonPanels(checker, context.extensionUri);
  const matrices = new MatrixPanels(checker, context.extensionUri);
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
    commands.registerCommand("edgewise.openSample", () => openSampleWorkspace(context)),
    commands.registerCommand("edgewise.showWalkthrough", () => openWalkthrough()),
  ];
}
