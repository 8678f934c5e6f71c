import type { RunOverview, TimeWindow } from "../../../server/language-server/client-messages/runs.ts";
import { editedInWords } from "../edited-words.ts";
import { hostOf, make } from "../elements.ts";
import { byteOf, findByte } from "./find-byte.ts";
import { keysInWords } from "./keys.ts";
import type { FromRibbon, ToRibbon } from "./messages.ts";
import { RibbonCanvas } from "./ribbon-canvas.ts";
import { momentInWords } from "./time-words.ts";
import { verdictOf } from "./verdict.ts";
import { closeUp, revealing, zoomed } from "./viewport.ts";

const host = hostOf<FromRibbon>();
const page = document.getElementById("view") ?? document.body;
const since = make("span", { class: "soft", "aria-live": "polite" });
const again = make("button", { type: "button", class: "link", hidden: true }, "Run Again");
again.addEventListener("click", () => host.postMessage({ kind: "again" }));
let canvas: RibbonCanvas | undefined;

window.addEventListener("message", ({ data }: MessageEvent<ToRibbon>) => {
  switch (data.kind) {
    case "run":
      show(data.overview);
      break;
    case "panel":
      page.querySelector(".cannot")?.remove();
      canvas?.take(data.panel, data.columns);
      break;
    case "edited":
      tellEdited(data.files);
      break;
    case "say":
      canvas?.say(data.words);
      break;
    case "cannot":
      tell(data.words);
      canvas?.refused();
  }
});
host.postMessage({ kind: "ready" });

/** Stays to be seen, as what is asked for next is said over it. */
function tell(words: string): void {
  const told = page.querySelector(".cannot");
  if (told?.textContent === words) return;
  told?.remove();
  canvas?.element.before(make("p", { class: "cannot", role: "alert" }, words));
  again.hidden = false;
}

function tellEdited(files: readonly string[]): void {
  const words = editedInWords(files);
  // What is set is read out, even where it stays the same.
  if (since.textContent !== words) since.textContent = words;
  again.hidden = files.length === 0 && page.querySelector(".cannot") === null;
}

/** Another run is looked at where the one before was. */
function show(overview: RunOverview): void {
  const seen = canvas?.isWhole === false ? canvas.window : undefined;
  canvas?.stop();
  since.textContent = "";
  again.hidden = true;
  canvas = build(overview);
  if (seen !== undefined) canvas.show(zoomed(seen, 1, seen.from, overview.ended));
}

function build(overview: RunOverview): RibbonCanvas {
  const spoken = make("output", { class: "spoken", "aria-live": "polite" });
  const ribbon = new RibbonCanvas(overview, {
    say: (words) => {
      spoken.textContent = words;
    },
    ask: (tile) => host.postMessage({ kind: "panel", ...tile }),
    open: (place) => host.postMessage({ kind: "open", place }),
    find: () => search.field.focus(),
  });
  const search = searchBox(overview, ribbon);
  const { closeUp: moment } = overview;
  const tools = make(
    "div",
    { class: "tools", role: "group", "aria-label": "Ribbon" },
    button("+", "Closer", () => ribbon.zoom(0.5)),
    button("\u2212", "Further", () => ribbon.zoom(2)),
    button("Whole run", "The whole run", () => ribbon.look({ from: 0, to: overview.ended })),
    ...(moment === undefined ? [] : [button(inBrief(moment.title), moment.title, () => ribbon.look(moment))]),
    make("span", { class: "gap" }),
    search.form,
    make("span", { class: "gap" }),
    button("Save SVG...", "Save what is in sight as a picture", () => save("svg", ribbon)),
    button("Save VCD...", "Save the run's waveforms", () => save("vcd", ribbon)),
  );
  const outcome = overview.passed ? "passed" : "failed";
  page.replaceChildren(
    make(
      "header",
      {},
      make("h1", {}, overview.title),
      make("span", { class: `outcome ${outcome}` }, outcome),
      since,
      again,
    ),
    make("p", { class: "unseen", id: "description" }, overview.description),
    tools,
    ribbon.element,
    spoken,
    make(
      "p",
      { class: "keys soft", role: "note", "aria-label": "Keys" },
      ...keysInWords.flatMap(([keys, does]) => [make("kbd", {}, keys), ` ${does}  `]),
    ),
    verdictOf(overview, {
      moment: (time) => {
        ribbon.look(closeUp({ from: time, to: time + 1e9 }, 0.2, overview.ended));
        ribbon.focus();
      },
      place: (place) => host.postMessage({ kind: "open", place }),
    }),
  );
  ribbon.start();
  ribbon.say(
    `${overview.edges} edges in ${momentInWords(overview.ended)}. ${overview.passed ? "" : "Faults have flags."}`,
  );
  return ribbon;
}

function save(format: "svg" | "vcd", ribbon: RibbonCanvas): void {
  host.postMessage({ kind: "save", format, window: ribbon.isWhole ? undefined : ribbon.window });
}

/** "Close up: the slowest report, 22.12 ms on its way" as "Slowest report". */
function inBrief(title: string): string {
  const [words = title] = title.replace(/^Close up: (the )?/, "").split(",");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** What is written on it is its name, unless that is a sign alone. */
function button(words: string, title: string, click: () => void): HTMLElement {
  const isSign = !/\w/.test(words);
  const element = make("button", { type: "button", title, "aria-label": isSign && title }, words);
  element.addEventListener("click", click);
  return element;
}

/** A field for a byte; Enter shows the next one, Shift+Enter the one before. */
function searchBox(overview: RunOverview, ribbon: RibbonCanvas) {
  const field = make("input", {
    type: "text",
    size: 10,
    placeholder: "Byte, as F4",
    "aria-label": "Find a byte, in hexadecimal",
    spellcheck: "false",
  });
  let last: TimeWindow | undefined;
  const find = (direction: "next" | "previous"): void => {
    const byte = byteOf(field.value);
    if (byte === undefined) {
      ribbon.say("A byte has one or two hexadecimal digits, as F4 or 0xF4.");
      return;
    }
    const from = last?.from ?? ribbon.window.from - 1;
    const found = findByte(overview.bytes, byte, from, direction);
    if (found === undefined) {
      ribbon.say(`No byte of the run is ${field.value}.`);
      return;
    }
    last = found;
    // Close enough to be read.
    const isSmall = (found.to - found.from) * 40 < ribbon.window.to - ribbon.window.from;
    const view = isSmall
      ? closeUp(found, 0.08, overview.ended)
      : revealing(ribbon.window, found, overview.ended);
    ribbon.choose(view, found);
  };
  field.addEventListener("input", () => {
    last = undefined;
  });
  field.addEventListener("keydown", (event) => {
    if (event.key === "Enter") find(event.shiftKey ? "previous" : "next");
    if (event.key === "Escape") ribbon.focus();
  });
  const form = make(
    "span",
    { class: "search", role: "search" },
    field,
    button("\u2191", "The byte before", () => find("previous")),
    button("\u2193", "The next byte", () => find("next")),
  );
  return { form, field };
}
