import { describe, expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { ProjectChecks } from "../../../server/language-server/project-checks.ts";
import { Projects } from "../../../server/language-server/projects.ts";
import { pathOfUri } from "../../../server/language-server/uri-paths.ts";
import { WorkspaceFiles } from "../../../server/language-server/workspace-files.ts";
import { WorkspaceFolders } from "../../../server/language-server/workspace-folders.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import type { Service } from "../../../src-core/service/service.ts";
import { noTrials } from "./no-trials.ts";

interface Found {
  readonly files: readonly string[];
  readonly configured: boolean;
  readonly units: number;
}

/** Projects of one workspace folder `/w`; a path outside it, or outside `found`, is a project by itself. */
function projectsOver(found: Readonly<Record<string, Found>>) {
  const asked: string[] = [];
  const dropped: string[] = [];
  const service: Service = {
    projectsAt: (path) =>
      path === "/w"
        ? Object.entries(found)
            .filter(([id]) => id.startsWith("/w/"))
            .map(([id, { configured, units }]) => ({ id, root: id, configured, units }))
        : [{ id: path, root: "/w", configured: false, units: 1 }],
    check(id) {
      asked.push(id);
      return {
        findings: [],
        notUnderstood: [],
        settingsFaults: [],
        files: found[id]?.files ?? [id],
        checked: [],
      };
    },
    forget: () => undefined,
    hover: () => undefined,
    inlayHints: () => [],
    notes: () => ({ proposals: [], untold: [] }),
    complete: () => [],
    tryOut: () => undefined,
    runWhole: () => undefined,
    choose: () => undefined,
    lenses: () => [],
    lineValues: () => ({ kind: "cannot", message: "" }),
    movementsFor: () => [],
    takeOver: () => undefined,
    simulate: () => ({ kind: "cannot", message: "" }),
    runChoices: () => undefined,
    planMatrix: () => ({ kind: "cannot", message: "" }),
    runCell: () => ({ mouse: "", pc: "", outcomes: [] }),
    actions: () => [],
  };
  const files = new WorkspaceFiles(hostOfFiles({}));
  const folders = new WorkspaceFolders(
    { workspaceFolders: [{ uri: "file:///w", name: "w" }], rootUri: null },
    async () => undefined,
  );
  const nothing = () => undefined;
  const receiver = {
    publish: nothing,
    status: nothing,
    dropped: (project: string) => dropped.push(project),
    lensesChanged: nothing,
    log: nothing,
    pageUriOf: nothing,
  };
  const checks = new ProjectChecks(service, files, noTrials, receiver);
  const projects = new Projects(service, files, folders, checks);
  const open = (uri: string) => files.openBuffer(pathOfUri(uri) ?? "", TextDocument.create(uri, "c", 1, ""));
  const close = (uri: string) => files.closeBuffer(pathOfUri(uri) ?? "");
  return { projects, checks, asked, dropped, open, close };
}

test("a file opened before anything was searched for belongs to the project that reads it", async () => {
  const { projects, checks, asked, open } = projectsOver({
    "/w/p": { files: ["/w/p/main.c", "/w/p/port.h"], configured: true, units: 1 },
  });
  open("file:///w/p/port.h");
  await projects.checkChanged(["/w/p/port.h"]);
  expect(asked).toEqual(["/w/p"]);
  expect(checks.projectsWith("/w/p/port.h")).toEqual(["/w/p"]);
});

test("an edit checks the projects that read the file, and no others", async () => {
  const { projects, asked } = projectsOver({
    "/w/p": { files: ["/w/p/main.c", "/w/shared.h"], configured: true, units: 1 },
    "/w/q": { files: ["/w/q/main.c", "/w/shared.h"], configured: true, units: 1 },
    "/w/r": { files: ["/w/r/main.c"], configured: true, units: 1 },
  });
  await projects.checkEverything();
  asked.length = 0;
  await projects.checkChanged(["/w/shared.h"]);
  expect(asked).toEqual(["/w/p", "/w/q"]);
});

test("a large folder that nobody has called a firmware is left alone but for what is open", async () => {
  const { projects, asked, open } = projectsOver({
    "/w/kernel": { files: ["/w/kernel/a.c"], configured: false, units: 5000 },
    "/w/port": { files: ["/w/port/main.c"], configured: true, units: 5000 },
  });
  open("file:///w/kernel/a.c");
  await projects.checkEverything();
  expect(asked).toEqual(["/w/port", "/w/kernel/a.c"]);
});

test("settings that changed are followed by a new search", async () => {
  const { projects, asked } = projectsOver({
    "/w/p": { files: ["/w/p/main.c"], configured: true, units: 1 },
    "/w/q": { files: ["/w/q/main.c"], configured: true, units: 1 },
  });
  await projects.checkEverything();
  asked.length = 0;
  await projects.checkChanged(["/w/p/edgewise.json"]);
  expect(asked).toEqual(["/w/p", "/w/q"]);
});

describe("a file that no project reads", () => {
  const firmware = { "/w/p": { files: ["/w/p/main.c"], configured: true, units: 1 } };

  test("is checked while it is open, and dropped when it is closed", async () => {
    const { projects, checks, dropped, open, close } = projectsOver(firmware);
    await projects.checkEverything();
    open("file:///elsewhere/io.h");
    await projects.checkChanged(["/elsewhere/io.h"]);
    expect(await projects.known()).toEqual(["/w/p", "/elsewhere/io.h"]);
    close("file:///elsewhere/io.h");
    await projects.checkChanged(["/elsewhere/io.h"]);
    expect(await projects.known()).toEqual(["/w/p"]);
    expect(dropped).toEqual(["/elsewhere/io.h"]);
    expect(checks.projectsWith("/elsewhere/io.h")).toEqual([]);
  });

  test("stays what it is while files come and go elsewhere, until a project reads it", async () => {
    const found: Record<string, Found> = { ...firmware };
    const { projects, dropped, open } = projectsOver(found);
    open("file:///elsewhere/io.h");
    await projects.checkEverything();
    await projects.checkEverything();
    expect(dropped).toEqual([]);
    found["/w/p"] = { files: ["/w/p/main.c", "/elsewhere/io.h"], configured: true, units: 1 };
    await projects.checkEverything();
    expect(await projects.known()).toEqual(["/w/p"]);
  });

  test("is checked by itself when the file that reads it is closed", async () => {
    const { projects, asked, open, close } = projectsOver({
      "/elsewhere/main.c": { files: ["/elsewhere/main.c", "/elsewhere/io.h"], configured: false, units: 1 },
    });
    await projects.checkEverything();
    for (const name of ["main.c", "io.h"]) {
      open(`file:///elsewhere/${name}`);
      await projects.checkChanged([`/elsewhere/${name}`]);
    }
    expect(asked).toEqual(["/elsewhere/main.c", "/elsewhere/main.c"]);
    close("file:///elsewhere/main.c");
    await projects.checkChanged(["/elsewhere/main.c"]);
    expect(await projects.known()).toEqual(["/elsewhere/io.h"]);
  });

  test("is left alone when it changes on disk", async () => {
    const { projects, asked } = projectsOver({});
    await projects.checkEverything();
    await projects.checkChanged(["/w/unread.h"]);
    expect(asked).toEqual([]);
  });
});
