import type { CarriedByte } from "../../../src-core/present/ribbon/carried-bytes.ts";
import type { Panel, Place, TimeWindow } from "../../../src-core/present/ribbon/ribbon.ts";
import type { RibbonWords } from "../../../src-core/present/ribbon/ribbon-of.ts";
import type { Named, RunChoices } from "../../../src-core/simulation-result.ts";

export type { CarriedByte } from "../../../src-core/present/ribbon/carried-bytes.ts";
export type {
  FaultText,
  Flag,
  LabelledText,
  Lane,
  Mark,
  MarkKind,
  Panel,
  Paths,
  Place,
  Row,
  Stretch,
  Thread,
  Tick,
  TimeWindow,
} from "../../../src-core/present/ribbon/ribbon.ts";
export type { RibbonWords } from "../../../src-core/present/ribbon/ribbon-of.ts";
export type { Named, RunChoices };

/** Request: the firmwares of the workspace, and what each can be run with. Its parameters are a `FirmwaresParams`. */
export const firmwaresRequest = "edgewise/firmwares";

export interface FirmwaresParams {
  /** URI of a file whose firmware is to be the first. */
  readonly near?: string;
}

export interface Firmware extends Omit<RunChoices, "root"> {
  /** What the server calls it. */
  readonly project: string;
  readonly name: string;
  /** URI of its folder. */
  readonly root: string;
}

/** Request: runs a firmware in a worker. Its parameters are a `RunParams`, its answer a `RunAnswer`; cancelling it ends the run. */
export const runRequest = "edgewise/run";

export interface RunParams {
  readonly project: string;
  readonly stroke: string;
  readonly mouse: string;
  readonly pc: string;
}

/** In one sentence, why there is not what was asked for. */
export interface CannotRun {
  readonly kind: "cannot";
  readonly message: string;
}

export type RunAnswer =
  | CannotRun
  | {
      readonly kind: "run";
      /** By which the run is asked for more, until it is closed. */
      readonly run: number;
      /** URI of the folder that the run's files are named from. */
      readonly root: string;
      readonly overview: RunOverview;
    };

/** All of a run but its panels. Times are picoseconds since power-up. */
export interface RunOverview extends RibbonWords {
  readonly ended: number;
  /** How many edges it has on all wires. */
  readonly edges: number;
  /** The moment that is worth a closer look. */
  readonly closeUp: (TimeWindow & { readonly title: string }) | undefined;
  /** All bytes on both sides, in order of time. */
  readonly bytes: readonly CarriedByte[];
}

/** Request: one window of a run, laid out. Its parameters are a `PanelParams`, its answer a `PanelAnswer`. */
export const panelRequest = "edgewise/runPanel";

export interface PanelParams extends TimeWindow {
  readonly run: number;
  /** How many steps of the time axis can be told apart. */
  readonly columns: number;
}

export type PanelAnswer = CannotRun | { readonly kind: "panel"; readonly panel: Panel };

/** Request: a run as a document. Its parameters are a `RunTextParams`, its answer a `RunTextAnswer`. */
export const runTextRequest = "edgewise/runText";

export interface RunTextParams {
  readonly run: number;
  readonly format: "svg" | "vcd";
  /** What of it is drawn; undefined for the whole run with a close-up. */
  readonly window: TimeWindow | undefined;
}

export type RunTextAnswer = CannotRun | { readonly kind: "text"; readonly text: string };

/** Request: which sources are not any more what a run was made of. Its parameters are a `RunSourcesParams`, its answer a `RunSourcesAnswer`. */
export const runSourcesRequest = "edgewise/runSources";

export interface RunSourcesParams {
  readonly run: number;
}

export type RunSourcesAnswer =
  | CannotRun
  | {
      readonly kind: "sources";
      /** As seen from the run's folder. */
      readonly edited: readonly string[];
    };

/** Request: where a place of a run is in the sources as they are. Its parameters are a `RunPlaceParams`, its answer a `RunPlaceAnswer`. */
export const runPlaceRequest = "edgewise/runPlace";

export interface RunPlaceParams {
  readonly run: number;
  readonly place: Place;
}

export type RunPlaceAnswer =
  | CannotRun
  | {
      readonly kind: "place";
      readonly place: Place;
      /** Its line is there as it was; else the place is where that was. */
      readonly isAsItWas: boolean;
    };

/** Notification: nobody looks at a run any more. Its parameters are a `CloseRunParams`. */
export const closeRunNotification = "edgewise/closeRun";

export interface CloseRunParams {
  readonly run: number;
}
