import { type CancellationToken, NotificationType, RequestType } from "vscode-languageserver";
import {
  type MatrixCellParams,
  type MatrixParams,
  type MatrixPlanAnswer,
  type MatrixRunAnswer,
  type MatrixRunParams,
  matrixCellNotification,
  matrixPlanRequest,
  matrixRunRequest,
  matrixSourcesRequest,
} from "../client-messages/matrix.ts";
import type { RunSourcesAnswer } from "../client-messages/runs.ts";
import { guarded } from "../guard.ts";
import { cellVerdict } from "../runs/cell-verdict.ts";
import { runMatrix } from "../runs/run-matrix.ts";
import type { RunSources } from "../runs/shown-runs.ts";
import { sourcesSince } from "../runs/sources-since.ts";
import { answer, type FeatureContext } from "./features.ts";

const planning = new RequestType<MatrixParams, MatrixPlanAnswer, void>(matrixPlanRequest);
const running = new RequestType<MatrixRunParams, MatrixRunAnswer, void>(matrixRunRequest);
const sources = new RequestType<MatrixParams, RunSourcesAnswer, void>(matrixSourcesRequest);
const cellDone = new NotificationType<MatrixCellParams>(matrixCellNotification);

const wish = { mice: undefined, pcs: undefined, strokes: undefined };
const failed = { kind: "cannot", message: "the matrix failed; the log says why" } as const;
const interrupted = { kind: "cannot", message: "the matrix was cancelled" } as const;
const gone = { kind: "cannot", message: "the firmware is not checked any more" } as const;

/** Every mouse at every PC. */
export function registerMatrix(context: FeatureContext): void {
  const { connection, service, log } = context;
  /** What the last matrix of each firmware was run of. */
  const ran = new Map<string, RunSources>();
  context.onDropped((project) => ran.delete(project));
  connection.onRequest(planning, ({ project }, cancelled) =>
    answer(context, "planning a matrix", cancelled, failed, () => service.planMatrix(project, wish)),
  );
  connection.onRequest(running, (params, cancelled) =>
    guarded("running a matrix", log, failed, () => run(context, ran, params, cancelled)),
  );
  connection.onRequest(sources, ({ project }) =>
    guarded<RunSourcesAnswer>("comparing sources", log, failed, () =>
      sourcesSince(context, ran.get(project)),
    ),
  );
}

async function run(
  context: FeatureContext,
  ran: Map<string, RunSources>,
  { project, matrix }: MatrixRunParams,
  cancelled: CancellationToken,
): Promise<MatrixRunAnswer> {
  const { connection, service, files } = context;
  const planned = service.planMatrix(project, wish);
  if (planned.kind === "cannot") return planned;
  const texts = files.textsOf(service.check(project).files);
  ran.set(project, { project, root: service.runChoices(project)?.root ?? project, texts });
  const interruption = new AbortController();
  let why: MatrixRunAnswer = interrupted;
  const listening = cancelled.onCancellationRequested(() => interruption.abort());
  const noShutdown = context.onShutdown(() => interruption.abort());
  const noDrop = context.onDropped((dropped) => {
    if (dropped !== project) return;
    why = gone;
    interruption.abort();
  });
  try {
    const results = await runMatrix({
      project,
      texts,
      plan: planned.plan,
      start: context.startRunWorker,
      workers: context.matrixWorkers,
      done: (cell) => void connection.sendNotification(cellDone, { matrix, cell: cellVerdict(cell) }),
      interrupted: interruption.signal,
    });
    return results === undefined ? why : { kind: "done" };
  } finally {
    listening.dispose();
    noShutdown();
    noDrop();
  }
}
