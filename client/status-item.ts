import { type Disposable, StatusBarAlignment, type StatusBarItem, ThemeColor, window } from "vscode";
import { type Restarts, type Shown, type StatusView, statusView } from "./status-view.ts";

/** The entry in the status bar: what was found, or that a check runs. */
export class StatusItem implements Disposable {
  readonly #item: StatusBarItem;
  #restarts: Restarts | undefined;

  constructor() {
    this.#item = window.createStatusBarItem("edgewise.status", StatusBarAlignment.Left);
    this.#item.name = "Edgewise";
  }

  show(status: Shown): void {
    // A checker that somebody turned off begins anew.
    if (status.state === "off") this.#restarts = undefined;
    const view = statusView(status, this.#restarts);
    const [command, ...args] = view.command;
    this.#item.text = view.text;
    this.#item.tooltip = view.tooltip;
    this.#item.command = { title: view.tooltip, command, arguments: args };
    this.#item.backgroundColor = colourOf(view.emphasis);
    if (view.visible) this.#item.show();
    else this.#item.hide();
  }

  /** The checker ended by itself and is started again. */
  restarted(): void {
    this.#restarts = { times: (this.#restarts?.times ?? 0) + 1, at: new Date().toLocaleTimeString() };
    this.show({ state: "starting-again" });
  }

  /** Somebody has the checker started anew. */
  startsAnew(): void {
    this.#restarts = undefined;
    this.show({ state: "starting-again" });
  }

  dispose(): void {
    this.#item.dispose();
  }
}

function colourOf(emphasis: StatusView["emphasis"]): ThemeColor | undefined {
  return emphasis === "none" ? undefined : new ThemeColor(`statusBarItem.${emphasis}Background`);
}
