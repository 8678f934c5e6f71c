import type {
  CarriedByte,
  Panel,
  Place,
  RunOverview,
  TimeWindow,
} from "../../../server/language-server/client-messages/runs.ts";
import { make } from "../elements.ts";
import { type Colours, themeColours } from "./colours.ts";
import { drawPicture, gutter } from "./draw-panel.ts";
import { actionOf, type KeyAction } from "./keys.ts";
import { type Measure, measuredByKey, measuredWith, measureInWords } from "./measure.ts";
import {
  axisHeight,
  heightOf,
  type Item,
  itemAt,
  itemsOf,
  type PlacedLane,
  type PlacedRow,
  placeLanes,
  placeRows,
  rowAt,
  rowHeight,
  stepFrom,
} from "./rows.ts";
import { windowInWords } from "./time-words.ts";
import { atBegin, atEnd, panned, revealing, serves, type Tile, tileFor, whole, zoomed } from "./viewport.ts";

export interface RibbonNeeds {
  /** To who reads and to who listens. */
  say(words: string): void;
  /** For a part of the run to be laid out; `take` gets it. */
  ask(tile: Tile): void;
  open(place: Place): void;
  /** The field for a byte is wanted. */
  find(): void;
}

interface LaidOut {
  readonly tile: Tile;
  readonly panel: Panel;
  readonly lanes: readonly PlacedLane[];
  readonly rows: readonly PlacedRow[];
}

/** Pixels that a click may be beside. */
const reach = 6;

/** The ribbon itself: draws what is in sight of the run, and has it laid out as one moves. */
export class RibbonCanvas {
  readonly element: HTMLElement;
  readonly #canvas: HTMLCanvasElement;
  /** Around what is chosen. */
  readonly #ring: HTMLElement;
  readonly #overview: RunOverview;
  readonly #needs: RibbonNeeds;
  #view: TimeWindow;
  #laidOut: LaidOut | undefined;
  #asked: Tile | undefined;
  #colours: Colours = themeColours();
  #row = 0;
  #chosen: Item | undefined;
  #wanted: CarriedByte | undefined;
  #measure: Measure | undefined;
  #frame = 0;
  #stop: () => void = () => undefined;

  constructor(overview: RunOverview, needs: RibbonNeeds) {
    this.#overview = overview;
    this.#needs = needs;
    this.#view = whole(overview.ended);
    this.#canvas = make("canvas", {
      tabindex: 0,
      role: "application",
      "aria-roledescription": "ribbon",
      "aria-label": "Wires of the mouse, code and line of the PC over time",
      "aria-describedby": "description",
    });
    this.#ring = make("div", { class: "ring", hidden: true });
    this.element = make("div", { class: "ribbon" }, this.#canvas, this.#ring);
    this.#listen();
  }

  get window(): TimeWindow {
    return { from: Math.floor(this.#view.from), to: Math.ceil(this.#view.to) };
  }

  get isWhole(): boolean {
    return this.#view.from <= 0 && this.#view.to >= this.#overview.ended;
  }

  /** Once it is in the page. */
  start(): void {
    const sizes = new ResizeObserver(() => this.#changed());
    sizes.observe(this.element);
    // The editor puts the theme's kind on the body and its colours on the root.
    const themes = new MutationObserver(() => {
      this.#colours = themeColours();
      this.#changed();
    });
    themes.observe(document.body, { attributes: true });
    themes.observe(document.documentElement, { attributes: true });
    this.#stop = () => {
      sizes.disconnect();
      themes.disconnect();
    };
    this.#changed();
    this.focus();
  }

  /** Before another takes its place. */
  stop(): void {
    this.#stop();
  }

  focus(): void {
    this.#canvas.focus({ preventScroll: true });
  }

  say(words: string): void {
    this.#needs.say(words);
  }

  zoom(factor: number): void {
    const { from, to } = this.#view;
    const chosen = this.#chosen?.from;
    const fixed = chosen !== undefined && chosen > from && chosen < to ? chosen : (from + to) / 2;
    this.look(zoomed(this.#view, factor, fixed, this.#overview.ended));
  }

  /** Shows a window and says which, as who moves without a pointer may not see it. */
  look(view: TimeWindow): void {
    this.show(view);
    this.say(windowInWords(this.#view));
  }

  show(view: TimeWindow): void {
    this.#view = { from: view.from, to: view.to };
    this.#changed();
  }

  /** Shows a window and, once it is laid out, chooses the byte in it. */
  choose(view: TimeWindow, byte: CarriedByte): void {
    this.#wanted = byte;
    this.show(view);
    this.#chooseWanted();
  }

  take(panel: Panel, columns: number): void {
    const { from, to } = panel;
    const lanes = placeLanes(panel);
    this.#laidOut = { tile: { from, to, columns }, panel, lanes, rows: placeRows(lanes) };
    this.#asked = undefined;
    this.#chooseWanted();
    this.#changed();
  }

  /** What was asked for does not come; the next move asks again. */
  refused(): void {
    this.#asked = undefined;
  }

  get #width(): number {
    return Math.max(gutter + 100, this.element.clientWidth);
  }

  #changed(): void {
    const width = this.#width - gutter;
    const { ended } = this.#overview;
    if (this.#asked === undefined && !serves(this.#laidOut?.tile, this.#view, width, ended)) {
      this.#asked = tileFor(this.#view, width, ended);
      this.#needs.ask(this.#asked);
    }
    if (this.#frame === 0) this.#frame = requestAnimationFrame(() => this.#draw());
  }

  #draw(): void {
    this.#frame = 0;
    const laidOut = this.#laidOut;
    if (laidOut === undefined) return;
    const { panel, lanes, rows } = laidOut;
    const width = this.#width;
    const height = heightOf(lanes) + 4;
    const scale = devicePixelRatio;
    const [deviceWidth, deviceHeight] = [Math.round(width * scale), Math.round(height * scale)];
    if (this.#canvas.width !== deviceWidth || this.#canvas.height !== deviceHeight) {
      this.#canvas.width = deviceWidth;
      this.#canvas.height = deviceHeight;
      this.#canvas.style.height = `${height}px`;
    }
    const context = this.#canvas.getContext("2d");
    if (context === null) return;
    context.setTransform(scale, 0, 0, scale, 0, 0);
    const { view, colours, row, measure } = {
      view: this.#view,
      colours: this.#colours,
      row: this.#row,
      measure: this.#measure,
    };
    drawPicture(context, { panel, lanes, rows, view, width, height, colours, row, measure });
    this.#placeRing(rows);
  }

  #placeRing(rows: readonly PlacedRow[]): void {
    const chosen = this.#chosen;
    const row = chosen && rows[chosen.row];
    const isSeen = chosen !== undefined && chosen.to >= this.#view.from && chosen.from <= this.#view.to;
    this.#ring.hidden = row === undefined || !isSeen;
    if (chosen === undefined || row === undefined || !isSeen) return;
    const left = Math.max(gutter, this.#xOf(chosen.from)) - 3;
    const right = Math.min(this.#width, this.#xOf(chosen.to)) + 3;
    this.#ring.style.left = `${left}px`;
    this.#ring.style.width = `${Math.max(6, right - left)}px`;
    this.#ring.style.top = `${row.top}px`;
    this.#ring.style.height = `${rowHeight}px`;
  }

  #xOf(time: number): number {
    const { from, to } = this.#view;
    return gutter + ((time - from) / (to - from)) * (this.#width - gutter);
  }

  #timeAt(x: number): number {
    const { from, to } = this.#view;
    return from + ((x - gutter) / (this.#width - gutter)) * (to - from);
  }

  #items(row: number): readonly Item[] {
    const placed = this.#laidOut?.rows[row];
    return placed === undefined ? [] : itemsOf(placed, row);
  }

  #pick(item: Item): void {
    this.#chosen = item;
    this.#row = item.row;
    this.say(item.words);
    this.#changed();
  }

  /** The frame of the byte that was searched for, once it is laid out fine enough. */
  #chooseWanted(): void {
    const wanted = this.#wanted;
    const { tile, rows } = this.#laidOut ?? {};
    if (wanted === undefined || rows === undefined) return;
    if (!serves(tile, this.#view, this.#width - gutter, this.#overview.ended)) return;
    this.#wanted = undefined;
    for (const [index, { lane, row }] of rows.entries()) {
      if (lane !== wanted.lane || row.kind !== "marks") continue;
      const isFrame = (item: Item): boolean => item.from <= wanted.from && item.to >= wanted.to;
      const kinds = new Set(["from-host", "from-mouse", "byte"]);
      if (!row.marks.some(({ kind }) => kinds.has(kind))) continue;
      const item = this.#items(index).find(isFrame);
      if (item !== undefined) {
        this.#pick(item);
        return;
      }
    }
  }

  #listen(): void {
    this.#canvas.addEventListener("keydown", (event) => {
      const action = actionOf(event);
      if (action === undefined) return;
      event.preventDefault();
      this.#act(action);
    });
    this.#canvas.addEventListener(
      "wheel",
      (event) => {
        event.preventDefault();
        const sideways = event.shiftKey && event.deltaX === 0 ? event.deltaY : event.deltaX;
        if (sideways !== 0) this.show(panned(this.#view, sideways / 1000, this.#overview.ended));
        else if (event.deltaY !== 0) {
          const fixed = this.#timeAt(Math.max(gutter, event.offsetX));
          const factor = 2 ** (Math.max(-100, Math.min(100, event.deltaY)) / 150);
          this.show(zoomed(this.#view, factor, fixed, this.#overview.ended));
        }
      },
      { passive: false },
    );
    this.#listenToPointer();
  }

  #listenToPointer(): void {
    let down: { readonly x: number; readonly view: TimeWindow } | undefined;
    let isDrag = false;
    this.#canvas.addEventListener("pointerdown", (event) => {
      if (event.button !== 0) return;
      down = { x: event.offsetX, view: this.#view };
      isDrag = false;
      this.#canvas.setPointerCapture(event.pointerId);
    });
    this.#canvas.addEventListener("pointermove", (event) => {
      if (down === undefined) return this.#hover(event);
      const moved = event.offsetX - down.x;
      if (Math.abs(moved) > 4) isDrag = true;
      if (isDrag) this.show(panned(down.view, -moved / (this.#width - gutter), this.#overview.ended));
    });
    this.#canvas.addEventListener("pointerup", (event) => {
      const isClick = down !== undefined && !isDrag;
      down = undefined;
      if (isClick) this.#click(event);
    });
    this.#canvas.addEventListener("pointercancel", () => {
      down = undefined;
    });
  }

  #under({ offsetX, offsetY }: MouseEvent): Item | undefined {
    const row = rowAt(this.#laidOut?.rows ?? [], offsetY);
    if (row === undefined || offsetX < gutter) return undefined;
    const distance = this.#timeAt(reach) - this.#timeAt(0);
    return itemAt(this.#items(row), this.#timeAt(offsetX), distance);
  }

  #hover(event: MouseEvent): void {
    const item = this.#under(event);
    this.#canvas.title = item?.words ?? "";
    this.#canvas.style.cursor =
      item === undefined ? "default" : item.place === undefined ? "crosshair" : "pointer";
  }

  #click(event: MouseEvent): void {
    if (event.offsetY < axisHeight) {
      this.#clickFlag(this.#timeAt(event.offsetX));
      return;
    }
    const item = this.#under(event);
    if (item === undefined) return;
    this.#pick(item);
    if (event.shiftKey) this.#showMeasure(measuredWith(this.#measure, item, this.#timeAt(event.offsetX)));
    else this.#open();
  }

  #clickFlag(time: number): void {
    const distance = this.#timeAt(2 * reach) - this.#timeAt(0);
    const flag = this.#laidOut?.panel.flags.find((each) => Math.abs(each.time - time) <= distance);
    const fault = this.#overview.faults.find(({ number }) => number === flag?.numbers[0]);
    if (fault === undefined) return;
    this.say(`Fault ${fault.number}: ${fault.message}`);
    if (fault.place !== undefined) this.#needs.open(fault.place);
  }

  #open(): void {
    const place = this.#chosen?.place;
    if (place !== undefined) this.#needs.open(place);
  }

  #showMeasure(measure: Measure): void {
    this.#measure = measure;
    this.say(measureInWords(measure));
    this.#changed();
  }

  #act(action: KeyAction): void {
    const { ended } = this.#overview;
    switch (action.do) {
      case "zoom":
        this.zoom(action.factor);
        return;
      case "pan":
        this.look(panned(this.#view, action.share, ended));
        return;
      case "whole":
        this.look(whole(ended));
        return;
      case "begin":
        this.look(atBegin(this.#view));
        return;
      case "end":
        this.look(atEnd(this.#view, ended));
        return;
      case "row":
        this.#toRow(action.by);
        return;
      case "step":
        this.#step(action.by);
        return;
      case "open":
        this.#open();
        return;
      case "measure":
        if (this.#chosen !== undefined) this.#showMeasure(measuredByKey(this.#measure, this.#chosen));
        return;
      case "find":
        this.#needs.find();
        return;
      case "drop":
        this.say(this.#measure === undefined ? "Nothing is chosen." : "Nothing is measured.");
        this.#measure = undefined;
        this.#chosen = undefined;
        this.#changed();
        return;
    }
  }

  #toRow(by: 1 | -1): void {
    const rows = this.#laidOut?.rows ?? [];
    this.#row = Math.max(0, Math.min(rows.length - 1, this.#row + by));
    const row = rows[this.#row];
    if (row !== undefined) this.say(`${row.lane}: ${row.row.label}`);
    this.#changed();
  }

  /** To the next item of the row; where what is laid out has none, on by most of what is in sight. */
  #step(by: 1 | -1): void {
    const items = this.#items(this.#row);
    const { from, to } = this.#view;
    const chosen = this.#chosen?.row === this.#row ? this.#chosen : undefined;
    const isSeen = chosen !== undefined && chosen.from >= from && chosen.from <= to;
    const item = stepFrom(items, isSeen ? chosen.from : by === 1 ? from - 1 : to, by);
    if (item === undefined) {
      this.look(panned(this.#view, 0.8 * by, this.#overview.ended));
      return;
    }
    this.#pick(item);
    const visible =
      item.isEdge || item.to - item.from > to - from ? { from: item.from, to: item.from } : item;
    this.show(revealing(this.#view, visible, this.#overview.ended));
  }
}
