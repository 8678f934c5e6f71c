import type { CheckStatus } from "../server/language-server/client-messages/status.ts";

/** What there is to show: the server's word, or that there is no server. */
export type Shown = CheckStatus | { readonly state: "stopped" };

/** How the status bar shows it. */
export interface StatusView {
  /** With the editor's icon names between `$(` and `)`. */
  readonly text: string;
  readonly tooltip: string;
  /** The command that a click runs. */
  readonly command: string;
  readonly emphasis: "none" | "warning";
  readonly visible: boolean;
}

const problemsList = "workbench.actions.view.problems";

export function statusView(status: Shown): StatusView {
  switch (status.state) {
    case "checking":
      return {
        text: "$(sync~spin) Edgewise",
        tooltip: "Edgewise is checking the firmware",
        command: problemsList,
        emphasis: "none",
        visible: true,
      };
    case "stopped":
      return {
        text: "$(circle-slash) Edgewise",
        tooltip: "Edgewise is not running; a click opens its log",
        command: "edgewise.showLog",
        emphasis: "none",
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
