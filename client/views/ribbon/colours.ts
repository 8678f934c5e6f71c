import type { Lane, Mark } from "../../../server/language-server/client-messages/runs.ts";

/** The editor's colours, as a canvas needs them. */
export interface Colours {
  readonly paper: string;
  readonly ink: string;
  readonly soft: string;
  readonly hair: string;
  readonly fault: string;
  readonly focus: string;
  readonly host: string;
  readonly interrupt: string;
  readonly lane: Readonly<Record<Lane["id"], string>>;
  /** Of functions, by their tone. */
  readonly tones: readonly string[];
  readonly font: string;
  readonly monospace: string;
}

/** Those of the theme that is chosen now. */
export function themeColours(): Colours {
  const style = getComputedStyle(document.documentElement);
  const colour = (name: string, otherwise: string): string =>
    style.getPropertyValue(`--vscode-${name}`).trim() || otherwise;
  const ink = colour("foreground", "#888");
  const soft = colour("descriptionForeground", ink);
  const chart = (name: string): string => colour(`charts-${name}`, ink);
  return {
    paper: colour("editor-background", "#fff"),
    ink,
    soft,
    hair: colour("editorIndentGuide-background1", soft),
    fault: colour("editorError-foreground", chart("red")),
    focus: colour("focusBorder", ink),
    host: chart("orange"),
    interrupt: chart("purple"),
    lane: { mouse: chart("green"), code: soft, pc: chart("blue") },
    // The last one is for several functions by turns.
    tones: [
      chart("green"),
      chart("yellow"),
      chart("blue"),
      chart("purple"),
      chart("orange"),
      chart("red"),
      soft,
    ],
    font: colour("font-family", "sans-serif"),
    monospace: colour("editor-font-family", "monospace"),
  };
}

/** Functions are tinted, so that what matters most stands out; all else is in full colour. */
export function fillOf({ kind, isFault, tone }: Mark, lane: Lane["id"], colours: Colours): string {
  if (isFault) return colours.fault;
  switch (kind) {
    case "function":
      return colours.tones[tone] ?? colours.soft;
    case "interrupt":
      return colours.interrupt;
    case "from-host":
      return colours.host;
    case "from-mouse":
      return colours.lane.mouse;
    case "control":
      return colours.soft;
    case "byte":
    case "report":
      return colours.lane[lane];
  }
}
