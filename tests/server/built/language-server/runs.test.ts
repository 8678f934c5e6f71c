import { pathToFileURL } from "node:url";
import { describe, expect, test } from "vitest";
import { CancellationTokenSource } from "vscode-jsonrpc/node";
import type {
  CellVerdict,
  MatrixPlanAnswer,
  MatrixRunAnswer,
} from "../../../../server/language-server/client-messages/matrix.ts";
import type {
  Firmware,
  PanelAnswer,
  RunAnswer,
  RunParams,
  RunTextAnswer,
} from "../../../../server/language-server/client-messages/runs.ts";
import { sampleFiles } from "../sample-files.ts";
import type { Session } from "./session.ts";
import { sessionOver } from "./sessions.ts";

const few = { mice: ["plain", "wheel"], pcs: ["rts-toggle"], strokes: ["nudge"] };

async function firmwareOf(session: Session): Promise<Firmware> {
  const [firmware] = await session.request<readonly Firmware[]>("edgewise/firmwares", {
    near: session.uri("main.c"),
  });
  if (firmware === undefined) throw new Error("the server knows no firmware");
  return firmware;
}

async function nudge(session: Session): Promise<RunParams> {
  const { project } = await firmwareOf(session);
  return { project, stroke: "nudge", mouse: "plain", pc: "rts-toggle" };
}

describe("a run", () => {
  test("what there is to choose from has names and titles, the usual first", async () => {
    const firmware = await firmwareOf(await sessionOver(sampleFiles("ferry-c", few)));
    expect(firmware.strokes[0]?.name).toBe("circle");
    expect(firmware.mice[0]?.name).toBe("plain");
    expect(firmware.pcs[0]?.name).toBe("rts-toggle");
    for (const { title } of [...firmware.strokes, ...firmware.mice, ...firmware.pcs]) {
      expect(title).not.toBe("");
    }
  });

  test("it is told in brief, its windows are laid out on request, and it can be had as a document", async () => {
    const session = await sessionOver(sampleFiles("ferry-c", few));
    const answer = await session.request<RunAnswer>("edgewise/run", await nudge(session));
    if (answer.kind !== "run") throw new Error(answer.message);
    const { run, overview } = answer;
    expect(overview).toMatchObject({ passed: true, faults: [] });
    // mouse(4): after RTS was dropped and raised, the mouse sends 0x4D.
    expect(overview.bytes.some(({ byte, lane }) => lane === "pc" && byte === 0x4d)).toBe(true);
    const window = { from: 0, to: overview.ended };
    const answered = await session.request<PanelAnswer>("edgewise/runPanel", {
      run,
      columns: 800,
      ...window,
    });
    if (answered.kind !== "panel") throw new Error(answered.message);
    const { lanes } = answered.panel;
    expect(lanes.map(({ id }) => id)).toEqual(["mouse", "code", "pc"]);
    const clock = lanes[0]?.rows[0];
    expect(clock?.kind === "wire" && clock.stretches.length).toBeLessThan(800);
    const textOf = async (format: string) => {
      const text = await session.request<RunTextAnswer>("edgewise/runText", { run, format, window });
      if (text.kind !== "text") throw new Error(text.message);
      return text.text;
    };
    const svg = await textOf("svg");
    expect(svg).toMatch(/^<\?xml .*<svg /s);
    // No path of the disk in what is handed on.
    expect(svg).not.toContain(session.folder.path);
    expect(await textOf("vcd")).toContain("$enddefinitions");
    await session.notify("edgewise/closeRun", { run });
    expect(await session.request("edgewise/runPanel", { run, columns: 800, ...window })).toEqual({
      kind: "cannot",
      message: "the run is not held any more",
    });
  });

  test("it is that of the text in the editor, not of the file", async () => {
    const files = sampleFiles("ferry-c", few);
    const session = await sessionOver(files);
    await session.open("main.c", (files["main.c"] ?? "").replace(/\bmain\b/, "no_more_main"));
    const answer = await session.request<RunAnswer>("edgewise/run", await nudge(session));
    expect(answer).toMatchObject({ kind: "run", overview: { passed: false } });
  });

  test("what was edited since is told, and where its lines are now, until the edit is taken back", async () => {
    const files = sampleFiles("ferry-c", few);
    const text = files["ps2.c"] ?? "";
    const session = await sessionOver(files);
    await session.open("ps2.c", text);
    const answer = await session.request<RunAnswer>("edgewise/run", await nudge(session));
    if (answer.kind !== "run") throw new Error(answer.message);
    const { run } = answer;
    const edited = () => session.request("edgewise/runSources", { run });
    expect(await edited()).toEqual({ kind: "sources", edited: [] });
    await session.change("ps2.c", 2, `// At the quay.\n\n${text}`);
    expect(await edited()).toEqual({ kind: "sources", edited: ["ps2.c"] });
    const place = { file: "ps2.c", line: 20, column: 5 };
    expect(await session.request("edgewise/runPlace", { run, place })).toEqual({
      kind: "place",
      place: { ...place, line: 22 },
      isAsItWas: true,
    });
    await session.change("ps2.c", 3, text);
    expect(await edited()).toEqual({ kind: "sources", edited: [] });
    const folder = { uri: pathToFileURL(session.folder.path).href, name: "test" };
    await session.notify("workspace/didChangeWorkspaceFolders", { event: { added: [], removed: [folder] } });
    await session.request("edgewise/firmwares", {});
    expect(await edited()).toEqual({ kind: "sources", edited: [] });
    await session.notify("edgewise/closeRun", { run });
    expect(await edited()).toMatchObject({ kind: "cannot" });
  });

  test("a name that there is not, and a run that is cancelled, are said", async () => {
    const session = await sessionOver(sampleFiles("ferry-c", few));
    const params = await nudge(session);
    expect(await session.request("edgewise/run", { ...params, mouse: "plane" })).toMatchObject({
      kind: "cannot",
      message: expect.stringContaining("plain"),
    });
    const source = new CancellationTokenSource();
    const cancelled = session.request<RunAnswer>(
      "edgewise/run",
      { ...params, stroke: "circle" },
      source.token,
    );
    // Once this is answered, the run is on.
    await firmwareOf(session);
    source.cancel();
    expect(await cancelled).toEqual({ kind: "cannot", message: "the run was cancelled" });
  });
});

describe("a matrix", () => {
  test("each cell is told with its verdict, and a fault with its stroke", async () => {
    const session = await sessionOver(sampleFiles("ferry-c-faults", few));
    const cells: CellVerdict[] = [];
    session.onCell = (matrix, cell) => {
      expect(matrix).toBe(7);
      cells.push(cell);
    };
    const { project } = await firmwareOf(session);
    const answer = await session.request<MatrixPlanAnswer>("edgewise/matrixPlan", { project });
    if (answer.kind !== "plan") throw new Error(answer.message);
    expect(answer.plan.mice.map(({ name }) => name)).toEqual(few.mice);
    expect(await session.request("edgewise/matrixRun", { project, matrix: 7 })).toEqual({ kind: "done" });
    expect(cells.map(({ mouse }) => mouse).sort()).toEqual(few.mice);
    // The sample holds the clock for about 50 us before it sends; its README says that this is one of its faults.
    for (const cell of cells) {
      expect(cell).toMatchObject({ verdict: "failed", word: "ps2/request-hold-short", stroke: "nudge" });
      expect(cell.detail).toContain("100 us");
    }
  });

  test("sources that were edited since are told", async () => {
    const files = sampleFiles("ferry-c", few);
    const session = await sessionOver(files);
    const { project } = await firmwareOf(session);
    const edited = () => session.request("edgewise/matrixSources", { project });
    expect(await edited()).toMatchObject({ kind: "cannot" });
    await session.request("edgewise/matrixRun", { project, matrix: 1 });
    expect(await edited()).toEqual({ kind: "sources", edited: [] });
    await session.open("ps2.c", `// At the quay.\n${files["ps2.c"]}`);
    expect(await edited()).toEqual({ kind: "sources", edited: ["ps2.c"] });
  });

  test("cancelled, it ends without all of its cells", async () => {
    const session = await sessionOver(sampleFiles("ferry-c", {}));
    const { project } = await firmwareOf(session);
    const source = new CancellationTokenSource();
    const cells: CellVerdict[] = [];
    session.onCell = (_, cell) => {
      cells.push(cell);
      source.cancel();
    };
    const answer = await session.request<MatrixRunAnswer>(
      "edgewise/matrixRun",
      { project, matrix: 1 },
      source.token,
    );
    expect(answer).toEqual({ kind: "cannot", message: "the matrix was cancelled" });
    expect(cells.length).toBeGreaterThan(0);
    expect(cells.length).toBeLessThan(20);
  });

  test("why nothing can be run is the answer", async () => {
    const session = await sessionOver({ "main.c": "int main(void) { return 0; }\n" });
    const { project } = await firmwareOf(session);
    expect(await session.request("edgewise/matrixRun", { project, matrix: 1 })).toEqual({
      kind: "cannot",
      message: expect.stringContaining("chip"),
    });
  });
});
