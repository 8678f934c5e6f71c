import {
  CodeLensRefreshRequest,
  type Connection,
  DidChangeWatchedFilesNotification,
  FileChangeType,
  type InitializeParams,
  type InitializeResult,
  TextDocumentSyncKind,
  TextDocuments,
} from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { SourceHost } from "../../src-core/reader/source-host.ts";
import type { Service } from "../../src-core/service/service.ts";
import { HandedFiles } from "../files/handed-files.ts";
import { routedFiles } from "../files/routed-files.ts";
import type { PackageFiles } from "../package-files.ts";
import { statusNotification } from "./client-messages/status.ts";
import { registerFeatures } from "./features/features.ts";
import { fileClientOf } from "./file-client.ts";
import { FollowedSettings } from "./followed-settings.ts";
import { guarded, type Log } from "./guard.ts";
import { HandedFolders } from "./handed-folders.ts";
import { oneAtATime, QuietTimer } from "./pause.ts";
import { ProjectChecks } from "./project-checks.ts";
import { Projects } from "./projects.ts";
import type { StartRunWorker } from "./runs/run-worker.ts";
import { knowsLensCommands, wantsStatus } from "./settings.ts";
import { FirmwareTrials } from "./trials/firmware-trials.ts";
import type { StartWorker } from "./trials/trial-worker.ts";
import { isForeign, pathOfUri, uriOfPath } from "./uri-paths.ts";
import { isWanted, watchedFiles } from "./wanted-files.ts";
import { withListings } from "./with-listings.ts";
import { WorkspaceFiles } from "./workspace-files.ts";
import { WorkspaceFolders } from "./workspace-folders.ts";

/** Makes the service over the workspace's files. */
export type ServiceMaker = (host: SourceHost) => Service;

/** What the server is made of, apart from the connection. */
export interface ServerParts {
  readonly version: string;
  /** Undefined where the client alone can read files, as in a browser. */
  readonly disk: SourceHost | undefined;
  readonly makeService: ServiceMaker;
  /** Starts what tries firmware out beside the server. */
  readonly startWorker: StartWorker;
  /** Starts what runs firmware to show it. */
  readonly startRunWorker: StartRunWorker;
  /** How many cells of a matrix are run at the same time; at least 1. */
  readonly matrixWorkers: number;
  readonly packageFiles: PackageFiles;
}

/** Serves one client over `connection` until it says `exit`. */
export function serve(connection: Connection, parts: ServerParts): void {
  const log: Log = (message) => connection.console.error(message);
  connection.onInitialize((params): InitializeResult => {
    startSession(connection, parts, params, log);
    return {
      serverInfo: { name: "edgewise", version: parts.version },
      capabilities: {
        textDocumentSync: TextDocumentSyncKind.Incremental,
        hoverProvider: true,
        inlayHintProvider: true,
        codeLensProvider: { resolveProvider: false },
        codeActionProvider: { codeActionKinds: ["quickfix"] },
        completionProvider: { triggerCharacters: ["@", " ", "=", ".", '"', "/"] },
        workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
      },
    };
  });
  connection.listen();
}

function startSession(
  connection: Connection,
  { disk, makeService, startWorker, startRunWorker, matrixWorkers, packageFiles }: ServerParts,
  params: InitializeParams,
  log: Log,
): void {
  const handed = new HandedFiles();
  const isHanded = (path: string): boolean => disk === undefined || isForeign(path);
  const files = new WorkspaceFiles(disk === undefined ? handed : routedFiles(disk, handed, isForeign));
  const service = makeService(files);
  const handedFolders = new HandedFolders(handed, fileClientOf(connection, params), {
    // Requests may have asked for them before they came.
    changed: () => files.forgetAll(),
    log,
  });
  const folders = new WorkspaceFolders(params, (paths) => handedFolders.follow(paths.filter(isHanded)));
  const listings = (project: string) => handedFolders.listingsFor(project);
  const tellsStatus = wantsStatus(params.initializationOptions);
  const showsPages = params.capabilities.textDocument?.publishDiagnostics?.codeDescriptionSupport === true;
  const refreshesLenses = params.capabilities.workspace?.codeLens?.refreshSupport === true;
  const refreshLenses = oneAtATime(() =>
    guarded("refreshing lenses", log, undefined, () => connection.sendRequest(CodeLensRefreshRequest.type)),
  );
  const trials = new FirmwareTrials(withListings(startWorker, listings), {
    ready: (project) => void checks.request([project]),
    log,
  });
  const atDrop = new Set<(project: string) => void>();
  const checks = new ProjectChecks(service, files, trials, {
    publish: (file, diagnostics) => {
      void connection.sendDiagnostics({ uri: uriOfPath(file), diagnostics: [...diagnostics] });
    },
    status: (status) => {
      if (tellsStatus) void connection.sendNotification(statusNotification, status);
    },
    dropped: (project) => {
      for (const work of atDrop) work(project);
    },
    lensesChanged: () => {
      if (refreshesLenses) refreshLenses();
    },
    log,
    pageUriOf: (rule) => (showsPages ? packageFiles.pageUriOf(rule) : undefined),
  });
  const projects = new Projects(service, files, folders, checks);
  const everything = () => guarded("looking for projects", log, undefined, () => projects.checkEverything());

  const settings = new FollowedSettings(connection, params);
  const typing = followEdits(connection, files, handedFolders, checks, projects, settings, log);
  const atShutdown = new Set<() => void>([() => typing.stop(), () => trials.stop()]);
  registerFeatures({
    connection,
    service,
    files,
    projects,
    settings,
    trials,
    typing,
    lensCommands: knowsLensCommands(params.initializationOptions),
    log,
    startRunWorker: withListings(startRunWorker, listings),
    matrixWorkers,
    onShutdown(work) {
      atShutdown.add(work);
      return () => void atShutdown.delete(work);
    },
    onDropped(work) {
      atDrop.add(work);
      return () => void atDrop.delete(work);
    },
  });
  connection.onInitialized(async () => {
    await guarded("watching files", log, undefined, () => watchFiles(connection, params));
    if (params.capabilities.workspace?.workspaceFolders === true) {
      connection.workspace.onDidChangeWorkspaceFolders((event) => {
        folders.follow(event);
        void everything();
      });
    }
    await everything();
  });
  connection.onShutdown(() => {
    for (const work of atShutdown) work();
  });
  connection.onDidChangeWatchedFiles(async ({ changes }) => {
    await handedFolders.changed(changes);
    const telling = changes.flatMap(({ uri, type }) => {
      const path = pathOfUri(uri);
      // All that is deleted is told of, as folders are.
      return path !== undefined && (isWanted(path) || checks.reachInto(path)) ? [{ path, type }] : [];
    });
    if (telling.length === 0) return;
    for (const { path } of telling) {
      files.forget(path);
      checks.edited(path);
    }
    if (telling.some(({ type }) => type !== FileChangeType.Changed)) return void everything();
    const changed = telling.map(({ path }) => path);
    void guarded("checking changed files", log, undefined, () => projects.checkChanged(changed));
  });
}

/** Gives what waits for a pause in typing. */
function followEdits(
  connection: Connection,
  files: WorkspaceFiles,
  handedFolders: HandedFolders,
  checks: ProjectChecks,
  projects: Projects,
  settings: FollowedSettings,
  log: Log,
): QuietTimer {
  const documents = new TextDocuments(TextDocument);
  const edited = new Set<string>();
  const timer = new QuietTimer(() => {
    const now = [...edited];
    edited.clear();
    void guarded("checking edited files", log, undefined, () => projects.checkChanged(now));
  });
  const touch = (path: string, delay: number) => {
    edited.add(path);
    timer.poke(delay);
  };
  /** Opening and closing mostly leave the text as it was, and then what is being found out stays of use. */
  const exchange = (path: string, exchangeBuffer: () => void) => {
    const before = files.readText(path);
    exchangeBuffer();
    if (files.readText(path) !== before) checks.edited(path);
    touch(path, 0);
  };
  // Each document that is opened is told of as changed right afterwards.
  const opened = new WeakSet<TextDocument>();
  documents.onDidOpen(({ document }) => {
    opened.add(document);
    const path = pathOfUri(document.uri);
    if (path !== undefined) exchange(path, () => files.openBuffer(path, document));
  });
  documents.onDidChangeContent(({ document }) => {
    const path = pathOfUri(document.uri);
    if (opened.delete(document) || path === undefined) return;
    checks.edited(path);
    touch(path, settings.now.checkDelay);
  });
  documents.onDidSave(({ document }) => {
    const path = pathOfUri(document.uri);
    if (path !== undefined) handedFolders.saved(path, document.getText());
  });
  documents.onDidClose(({ document }) => {
    const path = pathOfUri(document.uri);
    if (path !== undefined) exchange(path, () => files.closeBuffer(path));
  });
  documents.listen(connection);
  return timer;
}

async function watchFiles(connection: Connection, params: InitializeParams): Promise<void> {
  if (params.capabilities.workspace?.didChangeWatchedFiles?.dynamicRegistration !== true) return;
  await connection.client.register(DidChangeWatchedFilesNotification.type, {
    watchers: [...watchedFiles],
  });
}
