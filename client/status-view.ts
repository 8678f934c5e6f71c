import type { CheckStatus } from "../server/language-server/client-messages/status.ts";

/** What there is to show: the server's word, or why there is no server. */
export type Shown =
  | CheckStatus
  /** The settings say so, or it was stopped. */
  | { readonly state: "off" }
  | { readonly state: "starting-again" }
  /** It ended by itself too often. */
  | { readonly state: "gave-up" };

/** That the server ended by itself and was started again. */
export interface Restarts {
  readonly times: number;
  /** Of the last one, as a clock shows it. */
  readonly at: string;
}

/** How the status bar shows it. */
export interface StatusView {
  /** With the editor's icon names between `$(` and `)`. */
  readonly text: string;
  readonly tooltip: string;
  /** The command that a click runs, and what it is called with. */
  readonly command: readonly [name: string, ...args: readonly string[]];
  readonly emphasis: "none" | "warning" | "error";
  readonly visible: boolean;
}

const problemsList = ["workbench.actions.view.problems"] as const;

export function statusView(status: Shown, restarts?: Restarts): StatusView {
  const view = viewOf(status);
  if (restarts === undefined || status.state === "off" || status.state === "gave-up") return view;
  const often = restarts.times === 1 ? "once" : `${restarts.times} times`;
  const told = `It ended unexpectedly and was started again ${often}, last at ${restarts.at}.`;
  return { ...view, tooltip: `${view.tooltip}. ${told}` };
}

function viewOf(status: Shown): StatusView {
  switch (status.state) {
    case "checking":
      return {
        text: "$(sync~spin) Edgewise",
        tooltip: "Edgewise is checking the firmware",
        command: problemsList,
        emphasis: "none",
        visible: true,
      };
    case "off":
      return {
        text: "$(circle-slash) Edgewise",
        tooltip: "Edgewise does not run: a click opens the setting that turns it on",
        command: ["workbench.action.openSettings", "edgewise.enable"],
        emphasis: "none",
        visible: true,
      };
    case "starting-again":
      return {
        text: "$(sync~spin) Edgewise: starting again",
        tooltip: "Edgewise is started again",
        command: ["edgewise.showLog"],
        emphasis: "none",
        visible: true,
      };
    case "gave-up":
      return {
        text: "$(error) Edgewise: ended",
        tooltip: "Edgewise ended unexpectedly too often and is not started again: a click starts it",
        command: ["edgewise.restart"],
        emphasis: "error",
        visible: true,
      };
    case "ready":
      return readyView(status);
  }
}

function readyView({ projects, errors, warnings, infos }: Extract<Shown, { state: "ready" }>): StatusView {
  const counts = [amount(errors, "error"), amount(warnings, "warning"), amount(infos, "info")];
  const pressing = [errors, warnings].flatMap((count, index) => (count === 0 ? [] : (counts[index] ?? [])));
  return {
    text: pressing.length === 0 ? "$(check) Edgewise" : `Edgewise: ${pressing.join(", ")}`,
    tooltip: `Edgewise checked ${amount(projects, "firmware")}: ${counts.join(", ")}`,
    command: problemsList,
    emphasis: errors > 0 ? "warning" : "none",
    visible: projects > 0,
  };
}

function amount(count: number, noun: string): string {
  return count === 1 ? `1 ${noun}` : `${count} ${noun}s`;
}
