import { findNodeAtLocation, type Node } from "jsonc-parser";
import type { RuleLevel } from "../../finding.ts";
import { BUTTONS, type Button } from "../note.ts";
import { chipNamed } from "../values/chip.ts";
import { parseClock } from "../values/clock.ts";
import { parseScale } from "../values/scale.ts";
import type { Vocabulary } from "../vocabulary.ts";
import type { Said, Wires } from "../wires.ts";
import { readJson } from "./json-tree.ts";
import { settingsSchema } from "./schema.ts";
import { NO_SETTINGS, type OwnStrokeStep, type Settings, type SettingsProblem } from "./settings.ts";
import { type Faults, validate } from "./validate.ts";

/** Name of the settings file at a project's root. */
export const SETTINGS_FILE = "edgewise.json";

export interface SettingsRead {
  /** What could be understood; faulty values are left out. */
  readonly settings: Settings;
  /** In order of their place; not empty means that the file is broken. */
  readonly problems: readonly SettingsProblem[];
}

/** Reads the text of an edgewise.json. `file` is its path, for spans. Never throws. */
export function readSettings(file: string, text: string, vocabulary: Vocabulary): SettingsRead {
  const { root, problems } = readJson(file, text);
  if (root === undefined) return { settings: { ...NO_SETTINGS, file }, problems };
  const faults: Faults = { file, problems: [...problems], nodes: new Set() };
  validate(root, settingsSchema(vocabulary, ownStrokeNames(root)), "", faults);
  const settings = new SettingsReader(file, root, faults).read(vocabulary);
  return { settings, problems: faults.problems.sort((a, b) => a.span.start - b.span.start) };
}

/** Names under which the file has movements, sound or not. */
export function ownStrokeNames(root: Node): readonly string[] {
  return (findNodeAtLocation(root, ["simulate", "ownStrokes"])?.children ?? []).flatMap(({ children }) => {
    const name: unknown = children?.[0]?.value;
    return typeof name === "string" ? [name] : [];
  });
}

/** Takes sound values out of the tree. */
class SettingsReader {
  readonly #file: string;
  readonly #root: Node;
  readonly #faults: Faults;

  constructor(file: string, root: Node, faults: Faults) {
    this.#file = file;
    this.#root = root;
    this.#faults = faults;
  }

  read(vocabulary: Vocabulary): Settings {
    return {
      file: this.#file,
      wires: this.#wires(vocabulary),
      sources: this.#find(["sources"]) === undefined ? undefined : this.#strings(["sources"]),
      defines: this.#entries("defines", (text) => text),
      includePaths: this.#strings(["includePaths"]),
      rules: this.#entries("rules", oneOf<RuleLevel>("error", "warning", "info", "off")),
      simulate: {
        strokes: this.#strings(["simulate", "strokes"]),
        mice: this.#strings(["simulate", "mice"]),
        pcs: this.#strings(["simulate", "pcs"]),
        ownStrokes: this.#ownStrokes(),
      },
    };
  }

  #wires(vocabulary: Vocabulary): Wires {
    const text = (...path: string[]) => this.#text(path, (value) => value);
    return {
      board: {
        chip: this.#text(["board", "chip"], (value) => chipNamed(value, vocabulary)?.name),
        clockHz: this.#text(["board", "clock"], parseClock),
      },
      ps2: {
        clock: text("wires", "ps2", "clock"),
        data: text("wires", "ps2", "data"),
        pullups: this.#text(["wires", "ps2", "pullups"], oneOf("internal", "external")),
      },
      serial: {
        uart: this.#number(["wires", "serial", "uart"]),
        tx: text("wires", "serial", "tx"),
        rts: text("wires", "serial", "rts"),
        dtr: text("wires", "serial", "dtr"),
        report: text("wires", "serial", "report"),
        shifter: this.#text(["wires", "serial", "shifter"], oneOf("inverting", "none")),
        baud: this.#number(["wires", "serial", "baud"]),
        line: text("wires", "serial", "line"),
        scale: this.#text(["wires", "serial", "scale"], parseScale),
      },
    };
  }

  /** A movement with a faulty step would be another one, so it is left out whole. */
  #ownStrokes(): ReadonlyMap<string, Said<readonly OwnStrokeStep[]>> {
    const strokes = new Map<string, Said<readonly OwnStrokeStep[]>>();
    for (const property of this.#find(["simulate", "ownStrokes"])?.children ?? []) {
      const [key, steps] = property.children ?? [];
      const name: unknown = key?.value;
      if (steps === undefined || typeof name !== "string") continue;
      if (this.#isFaulty(steps) || this.#holdsFault(steps)) continue;
      strokes.set(name, this.#said(steps, (steps.children ?? []).map(readStep)));
    }
    return strokes;
  }

  #holdsFault(node: Node): boolean {
    return this.#faults.nodes.has(node) || (node.children ?? []).some((child) => this.#holdsFault(child));
  }

  /** The node at a path, unless it or a node around it is faulty. */
  #find(path: readonly string[]): Node | undefined {
    const node = findNodeAtLocation(this.#root, [...path]);
    return node === undefined || this.#isFaulty(node) ? undefined : node;
  }

  #isFaulty(node: Node): boolean {
    for (let each: Node | undefined = node; each !== undefined; each = each.parent) {
      if (this.#faults.nodes.has(each)) return true;
    }
    return false;
  }

  #said<T>(node: Node, value: T): Said<T> {
    return { value, span: { file: this.#file, start: node.offset, end: node.offset + node.length } };
  }

  #text<T>(path: readonly string[], read: (text: string) => T | undefined): Said<T> | undefined {
    const node = this.#find(path);
    return node === undefined ? undefined : this.#saidText(node, read);
  }

  #saidText<T>(node: Node, read: (text: string) => T | undefined): Said<T> | undefined {
    const text: unknown = node.value;
    const value = typeof text === "string" ? read(text) : undefined;
    return value === undefined ? undefined : this.#said(node, value);
  }

  #number(path: readonly string[]): Said<number> | undefined {
    const node = this.#find(path);
    const value: unknown = node?.value;
    return node === undefined || typeof value !== "number" ? undefined : this.#said(node, value);
  }

  #strings(path: readonly string[]): readonly Said<string>[] {
    const children = this.#find(path)?.children ?? [];
    return children.flatMap((child) => {
      if (this.#isFaulty(child)) return [];
      return this.#saidText(child, (text) => text) ?? [];
    });
  }

  #entries<T>(name: string, read: (text: string) => T | undefined): ReadonlyMap<string, Said<T>> {
    const entries = new Map<string, Said<T>>();
    for (const property of this.#find([name])?.children ?? []) {
      const [key, value] = property.children ?? [];
      const keyText: unknown = key?.value;
      if (value === undefined || typeof keyText !== "string" || this.#isFaulty(value)) continue;
      const said = this.#saidText(value, read);
      if (said !== undefined) entries.set(keyText, said);
    }
    return entries;
  }
}

/** A step that was found sound. */
function readStep(step: Node): OwnStrokeStep {
  const number = (name: string): number => {
    const value: unknown = findNodeAtLocation(step, [name])?.value;
    return typeof value === "number" ? value : 0;
  };
  const buttons = (name: string): readonly Button[] =>
    (findNodeAtLocation(step, [name])?.children ?? []).flatMap((child) => {
      const value: unknown = child.value;
      return BUTTONS.find((button) => button === value) ?? [];
    });
  return {
    ms: number("ms"),
    right: number("right"),
    down: number("down"),
    wheel: number("wheel"),
    press: buttons("press"),
    release: buttons("release"),
  };
}

function oneOf<T extends string>(...names: readonly T[]): (text: string) => T | undefined {
  return (text) => names.find((name) => name === text);
}
