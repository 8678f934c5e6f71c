import { NotificationType, RequestType } from "vscode-languageserver";
import { nameOf } from "../../files/paths.ts";
import {
  type CannotRun,
  type CloseRunParams,
  closeRunNotification,
  type Firmware,
  type FirmwaresParams,
  firmwaresRequest,
  type PanelAnswer,
  type PanelParams,
  panelRequest,
  type RunAnswer,
  type RunParams,
  type RunTextAnswer,
  type RunTextParams,
  runRequest,
  runTextRequest,
} from "../client-messages/runs.ts";
import { guarded } from "../guard.ts";
import { usualSeed } from "../runs/run-matrix.ts";
import { ShownRuns } from "../runs/shown-runs.ts";
import { pathOfUri, uriOfPath } from "../uri-paths.ts";
import type { FeatureContext } from "./features.ts";

const firmwares = new RequestType<FirmwaresParams, readonly Firmware[], void>(firmwaresRequest);
const run = new RequestType<RunParams, RunAnswer, void>(runRequest);
const panel = new RequestType<PanelParams, PanelAnswer, void>(panelRequest);
const text = new RequestType<RunTextParams, RunTextAnswer, void>(runTextRequest);
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
  connection.onNotification(closeRun, ({ run: number }) => shown.close(number));
  context.onShutdown(() => shown.stop());
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
