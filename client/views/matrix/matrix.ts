import type { CellVerdict, MatrixPlan } from "../../../server/language-server/client-messages/matrix.ts";
import { editedInWords } from "../edited-words.ts";
import { hostOf, make } from "../elements.ts";
import type { EndOfMatrix, FromMatrix, ToMatrix } from "./messages.ts";
import { endInWords, faultsOf, progressInWords } from "./tally.ts";

const host = hostOf<FromMatrix>();
const page = document.getElementById("view") ?? document.body;
let matrix: Matrix | undefined;

window.addEventListener("message", ({ data }: MessageEvent<ToMatrix>) => {
  switch (data.kind) {
    case "plan":
      matrix = new Matrix(data.name, data.plan);
      break;
    case "cell":
      matrix?.take(data.cell);
      break;
    case "edited":
      matrix?.tellEdited(data.files);
      break;
    case "end":
      matrix?.end(data.why);
  }
});
host.postMessage({ kind: "ready" });

/** A table whose cells fill in. */
class Matrix {
  readonly #all: number;
  readonly #places = new Map<string, HTMLElement>();
  readonly #cells: CellVerdict[] = [];
  readonly #bar: HTMLProgressElement;
  readonly #said = make("output", { class: "said", "aria-live": "off" });
  readonly #since = make("span", { class: "soft", "aria-live": "polite" });
  readonly #ended = make("p", { class: "unseen", role: "status" });
  readonly #faults = make("div", { class: "faults" });
  readonly #cancel = make("button", { type: "button" }, "Cancel");
  readonly #again = make("button", { type: "button", hidden: true }, "Run Again");
  readonly #frame = make("div", { class: "table", tabindex: -1, role: "region", "aria-label": "Cells" });

  constructor(name: string, plan: MatrixPlan) {
    this.#all = plan.mice.length * plan.pcs.length;
    this.#bar = make("progress", { max: this.#all, value: 0, "aria-label": "Cells that were run" });
    this.#cancel.addEventListener("click", () => {
      // A disabled button would lose the focus.
      this.#cancel.setAttribute("aria-disabled", "true");
      host.postMessage({ kind: "cancel" });
    });
    this.#again.addEventListener("click", () => host.postMessage({ kind: "again" }));
    this.#frame.append(this.#table(plan));
    const title = make("h1", { tabindex: -1 }, `${name}: every mouse at every PC`);
    page.replaceChildren(
      make("header", {}, title),
      make(
        "p",
        { class: "soft strokes" },
        `Strokes: ${plan.strokes.map((stroke) => stroke.name).join(", ")}`,
      ),
      make("div", { class: "tools" }, this.#bar, this.#said, this.#since, this.#cancel, this.#again),
      this.#ended,
      this.#frame,
      this.#faults,
    );
    this.#tell();
    // A screen reader says it, and the next control is the first.
    title.focus();
  }

  take(cell: CellVerdict): void {
    this.#cells.push(cell);
    const place = this.#places.get(placeOf(cell));
    if (place !== undefined) {
      place.className = cell.verdict.replace(" ", "-");
      place.title = cell.verdict === "passed" ? cell.detail : `${cell.word}: ${cell.detail}`;
      place.replaceChildren(cell.stroke === undefined ? cell.verdict : this.#button(cell, cell.stroke));
    }
    this.#tell();
  }

  /** What was run is not what the sources say now. */
  tellEdited(files: readonly string[]): void {
    const words = editedInWords(files);
    // What is set is read out, even where it stays the same.
    if (this.#since.textContent !== words) this.#since.textContent = words;
  }

  end(why: EndOfMatrix): void {
    // Whoever pressed it is left where the cells begin.
    if (document.activeElement === this.#cancel) this.#frame.focus();
    this.#cancel.hidden = true;
    this.#again.hidden = false;
    this.#bar.hidden = true;
    for (const place of this.#places.values())
      if (place.className === "waiting") place.replaceChildren("\u2013");
    this.#said.textContent = `${progressInWords(this.#cells, this.#all)}${endInWords(why)}`;
    this.#ended.textContent = this.#said.textContent;
  }

  #tell(): void {
    this.#bar.value = this.#cells.length;
    this.#said.textContent = progressInWords(this.#cells, this.#all);
    const faults = faultsOf(this.#cells);
    this.#faults.replaceChildren(
      ...(faults.length === 0 ? [] : [make("h2", {}, "What fails first")]),
      make(
        "dl",
        {},
        ...faults.flatMap(({ word, cells, first }) => [
          make("dt", {}, `${word}`),
          make(
            "dd",
            {},
            `${cells === 1 ? "1 cell" : `${cells} cells`}; with mouse ${first.mouse} at ${first.pc}, ${first.detail}`,
          ),
        ]),
      ),
    );
  }

  #table({ mice, pcs }: MatrixPlan): HTMLElement {
    const head = make(
      "tr",
      {},
      make("td", {}),
      ...pcs.map(({ name, title }) => make("th", { scope: "col", title }, name)),
    );
    const rows = mice.map((mouse) => {
      const cells = pcs.map((pc) => {
        const place = make("td", { class: "waiting" }, "\u00b7");
        this.#places.set(placeOf({ mouse: mouse.name, pc: pc.name }), place);
        return place;
      });
      return make("tr", {}, make("th", { scope: "row", title: mouse.title }, mouse.name), ...cells);
    });
    return make(
      "table",
      { "aria-label": "Mice down, PCs across" },
      make("thead", {}, head),
      make("tbody", {}, ...rows),
    );
  }

  #button({ mouse, pc, verdict, detail }: CellVerdict, stroke: string): HTMLElement {
    const words = `${verdict}: mouse ${mouse} at PC ${pc}, ${detail}. Shows the run.`;
    const button = make("button", { type: "button", class: "link", "aria-label": words }, verdict);
    button.addEventListener("click", () => host.postMessage({ kind: "show", stroke, mouse, pc }));
    return button;
  }
}

function placeOf({ mouse, pc }: Pick<CellVerdict, "mouse" | "pc">): string {
  return `${mouse} ${pc}`;
}
