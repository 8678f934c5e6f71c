import { element, type Markup, text } from "./element.ts";

/** Colours for a light and a dark surface: our own choice. */
type Colours = readonly [light: string, dark: string];

const paper: Colours = ["#fcfbf8", "#16181d"];
const ink: Colours = ["#1d2129", "#e6e4de"];
const soft: Colours = ["#5d6470", "#a2a7b0"];
const hair: Colours = ["#dcd9d0", "#33373f"];
const mouse: Colours = ["#0d6e66", "#4fc4b5"];
const mouseTint: Colours = ["#e6f2ef", "#1a2a2a"];
const host: Colours = ["#a85a06", "#e8a04c"];
const codeTint: Colours = ["#f1efea", "#1f2127"];
const pc: Colours = ["#3a49a8", "#96a3f2"];
const pcTint: Colours = ["#e9ecf8", "#1e2233"];
const fault: Colours = ["#c02626", "#ff7b72"];
const good: Colours = ["#1d7a3a", "#5fce83"];
const interrupt: Colours = ["#8d3f97", "#d79be0"];
/** Of functions, by their tone. */
const tones: readonly Colours[] = [
  ["#b9d3c6", "#3d5a4d"],
  ["#e2cf9f", "#665633"],
  ["#c3c9ea", "#454d78"],
  ["#e6bfc7", "#6d424d"],
  ["#b9d2e4", "#3a566a"],
  ["#d3d5ae", "#565a35"],
  // Several by turns.
  ["#dad6cd", "#3b3e46"],
];

/** Property, colours; selectors are classes. */
const rules: readonly (readonly [selector: string, property: string, colours: Colours])[] = [
  [".paper", "fill", paper],
  ["text", "fill", ink],
  [".soft", "fill", soft],
  [".good", "fill", good],
  [".bad", "fill", fault],
  [".on-colour", "fill", paper],
  [".grid", "stroke", hair],
  [".frame", "stroke", hair],
  [".lane-mouse", "fill", mouseTint],
  [".lane-code", "fill", codeTint],
  [".lane-pc", "fill", pcTint],
  [".name-mouse", "fill", mouse],
  [".name-code", "fill", soft],
  [".name-pc", "fill", pc],
  [".wire", "stroke", ink],
  [".busy", "fill", soft],
  [".from-host", "fill", host],
  [".from-mouse", "fill", mouse],
  [".report-mouse", "fill", mouse],
  [".report-pc", "fill", pc],
  [".byte", "fill", pc],
  [".control", "fill", soft],
  [".interrupt", "fill", interrupt],
  [".fault", "fill", fault],
  [".flag", "stroke", fault],
  [".top", "stop-color", mouse],
  [".end", "stop-color", pc],
  [".slow-top", "stop-color", host],
  [".path-sent", "stroke", mouse],
  [".path-received", "stroke", pc],
  [".dot-sent", "fill", mouse],
  [".dot-received", "fill", pc],
  ...tones.map((colours, tone) => [`.tone-${tone}`, "fill", colours] as const),
];

const shapes = `
text{font:13px system-ui,sans-serif}
.title{font-size:20px;font-weight:600}
.outcome{font-size:20px;font-weight:600;text-anchor:end}
.heading{font-size:14px;font-weight:600}
.small{font-size:11.5px}
.lane{font-size:12px;font-weight:600;letter-spacing:.08em}
.row{font-size:11.5px;text-anchor:end}
.tick{font-size:11px;text-anchor:middle}
.number{font-size:10.5px;font-weight:700;text-anchor:middle}
.mark{font:11px ui-monospace,monospace}
.grid,.frame{fill:none;stroke-width:1}
.wire{fill:none;stroke-width:1.2}
.busy{fill-opacity:.38}
.many{fill-opacity:.6}
.thread{fill-opacity:.34}
.slowest{fill-opacity:.6}
.flag{fill:none;stroke-width:1.2;stroke-dasharray:4 3}
.path{fill:none;stroke-width:1.6;stroke-linejoin:round;stroke-linecap:round}
`;

/** How everything looks, on a light surface and, where the reader wants it dark, on a dark one. */
export function styleSheet(): Markup {
  const coloured = (which: 0 | 1): string =>
    rules.map(([selector, property, colours]) => `${selector}{${property}:${colours[which]}}`).join("\n");
  const sheet = `${shapes}${coloured(0)}\n@media (prefers-color-scheme:dark){\n${coloured(1)}\n}\n`;
  return element("style", {}, text(sheet));
}
