import { NotificationType, RequestType } from "vscode-languageserver";
import { below, nameOf } from "../../files/paths.ts";
import {
  type CannotRun,
  type CloseRunParams,
  closeRunNotification,
  type Firmware,
  type FirmwaresParams,
  firmwaresRequest,
  type PanelAnswer,
  type PanelParams,
  type Place,
  panelRequest,
  type RunAnswer,
  type RunParams,
  type RunPlaceAnswer,
  type RunPlaceParams,
  type RunSourcesAnswer,
  type RunSourcesParams,
  type RunTextAnswer,
  type RunTextParams,
  runPlaceRequest,
  runRequest,
  runSourcesRequest,
  runTextRequest,
} from "../client-messages/runs.ts";
import { guarded } from "../guard.ts";
import { lineSince } from "../runs/edited-since.ts";
import { usualSeed } from "../runs/run-matrix.ts";
import { notHeld, type RunSources, ShownRuns } from "../runs/shown-runs.ts";
import { sourcesSince } from "../runs/sources-since.ts";
import { pathOfUri, uriOfPath } from "../uri-paths.ts";
import type { FeatureContext } from "./features.ts";

const firmwares = new RequestType<FirmwaresParams, readonly Firmware[], void>(firmwaresRequest);
const run = new RequestType<RunParams, RunAnswer, void>(runRequest);
const panel = new RequestType<PanelParams, PanelAnswer, void>(panelRequest);
const text = new RequestType<RunTextParams, RunTextAnswer, void>(runTextRequest);
const sources = new RequestType<RunSourcesParams, RunSourcesAnswer, void>(runSourcesRequest);
const place = new RequestType<RunPlaceParams, RunPlaceAnswer, void>(runPlaceRequest);
const closeRun = new NotificationType<CloseRunParams>(closeRunNotification);

const failed: CannotRun = { kind: "cannot", message: "the run failed; the log says why" };

/** Runs to look at. */
export function registerRuns(context: FeatureContext): void {
  const { connection, service, files, log } = context;
  const shown = new ShownRuns(context.startRunWorker);
  connection.onRequest(firmwares, ({ near }) =>
    guarded("listing firmwares", log, [], () => firmwaresOf(context, near)),
  );
  connection.onRequest(run, ({ project, stroke, mouse, pc }, cancelled) =>
    guarded<RunAnswer>("running", log, failed, () => {
      const texts = files.textsOf(service.check(project).files);
      return shown.run(project, texts, { stroke, mouse, pc, seed: usualSeed }, cancelled);
    }),
  );
  connection.onRequest(panel, (params) =>
    guarded<PanelAnswer>("laying out a run", log, failed, () => shown.panel(params)),
  );
  connection.onRequest(text, (params) =>
    guarded<RunTextAnswer>("writing a run", log, failed, () => shown.text(params)),
  );
  connection.onRequest(sources, ({ run: number }) =>
    guarded<RunSourcesAnswer>("comparing sources", log, failed, () =>
      sourcesSince(context, shown.sourcesOf(number)),
    ),
  );
  connection.onRequest(place, ({ run: number, place: of }) =>
    guarded<RunPlaceAnswer>("finding a line", log, failed, () =>
      placeSince(context, shown.sourcesOf(number), of),
    ),
  );
  connection.onNotification(closeRun, ({ run: number }) => shown.close(number));
  context.onShutdown(() => shown.stop());
}

function placeSince({ files }: FeatureContext, made: RunSources | undefined, of: Place): RunPlaceAnswer {
  if (made === undefined) return notHeld;
  const file = below(made.root, of.file);
  const before = made.texts.get(file);
  // What the run did not read, as what is built in, cannot have been edited.
  if (before === undefined) return { kind: "place", place: of, isAsItWas: true };
  const { line, isAsItWas } = lineSince(before, files.readText(file) ?? "", of.line);
  return { kind: "place", place: { ...of, line }, isAsItWas };
}

async function firmwaresOf(
  { projects, service }: FeatureContext,
  near: string | undefined,
): Promise<readonly Firmware[]> {
  // Before the search, no file is known to belong to a firmware of several.
  const known = await projects.known();
  const file = near === undefined ? undefined : pathOfUri(near);
  const nearest = file === undefined ? [] : projects.projectsOf(file);
  const all = [...new Set([...nearest, ...known])];
  return all.flatMap((project) => {
    const choices = service.runChoices(project);
    if (choices === undefined) return [];
    const { root, ...rest } = choices;
    return [{ ...rest, project, name: nameOf(project), root: uriOfPath(root) }];
  });
}
