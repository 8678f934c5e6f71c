import { type Disposable, StatusBarAlignment, type StatusBarItem, ThemeColor, window } from "vscode";
import { type Shown, statusView } from "./status-view.ts";

/** The entry in the status bar: what was found, or that a check runs. */
export class StatusItem implements Disposable {
  readonly #item: StatusBarItem;

  constructor() {
    this.#item = window.createStatusBarItem("edgewise.status", StatusBarAlignment.Left);
    this.#item.name = "Edgewise";
  }

  show(status: Shown): void {
    const view = statusView(status);
    this.#item.text = view.text;
    this.#item.tooltip = view.tooltip;
    this.#item.command = view.command;
    this.#item.backgroundColor =
      view.emphasis === "warning" ? new ThemeColor("statusBarItem.warningBackground") : undefined;
    if (view.visible) this.#item.show();
    else this.#item.hide();
  }

  dispose(): void {
    this.#item.dispose();
  }
}
