import type { Lane, Mark } from "../../../server/language-server/client-messages/runs.ts";
import { type Colour, colourOf, inkOn } from "./contrast.ts";

/** The editor's colours, as a canvas needs them. */
export interface Colours {
  readonly paper: string;
  readonly ink: string;
  readonly soft: string;
  readonly hair: string;
  /** How much of what is below its lines hide, from 0 to 1. */
  readonly hairShare: number;
  readonly fault: string;
  readonly focus: string;
  readonly host: string;
  readonly interrupt: string;
  readonly lane: Readonly<Record<Lane["id"], string>>;
  /** Of functions, by their tone. */
  readonly tones: readonly string[];
  readonly font: string;
  readonly monospace: string;
  /** For text on something that is filled with a colour. */
  textOn(fill: string): string;
}

/** Those of the theme that is chosen now. */
export function themeColours(): Colours {
  const style = getComputedStyle(document.documentElement);
  const colour = (name: string, otherwise: string): string =>
    style.getPropertyValue(`--vscode-${name}`).trim() || otherwise;
  const ink = colour("foreground", "#888");
  const soft = colour("descriptionForeground", ink);
  const chart = (name: string): string => colour(`charts-${name}`, ink);
  const paper = colour("editor-background", "#fff");
  return {
    paper,
    ink,
    soft,
    hair: colour("editorIndentGuide-background1", soft),
    // There such lines are as bright as text.
    hairShare: document.body.classList.contains("vscode-high-contrast") ? 0.3 : 1,
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
    textOn: textOn(paper, ink),
  };
}

/** The paper's colour or the ink's, whichever stands out more. */
function textOn(paper: string, ink: string): (fill: string) => string {
  const context = document.createElement("canvas").getContext("2d");
  const read = (text: string): Colour => {
    if (context === null) return colourOf(text);
    context.fillStyle = text;
    return colourOf(String(context.fillStyle));
  };
  const inks = [read(paper), read(ink)] as const;
  const known = new Map<string, string>();
  return (fill) => {
    const found = known.get(fill) ?? (inkOn(read(fill), inks[0], inks) === inks[0] ? paper : ink);
    known.set(fill, found);
    return found;
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
