import { expect, test } from "vitest";
import type { Diagnostic } from "vscode-languageserver/node";
import { firmwareWith, rightFirmware } from "../../../../src-core/checks/runs/right-firmware.ts";
import { sessionOver } from "./sessions.ts";

/*
 * What does not fit into one report is forgotten: nothing in the text is against a rule, and the encoder by itself is right.
 * A report holds -128 to 127 counts and says how far the mouse moved since the last one (mouse(4), Linux man-pages).
 */
const keeps = "    first->dx -= dx;\n    first->dy -= dy;";
const wrong = firmwareWith(keeps, "    first->dx = first->dy = 0;")["main.c"] ?? "";
const right = rightFirmware["main.c"] ?? "";

const rule = "report/counts-lost";
const isFaulty = (diagnostics: readonly Diagnostic[]) => diagnostics.some(({ code }) => code === rule);
const isClean = (diagnostics: readonly Diagnostic[]) => diagnostics.length === 0;
const isReady = (status: unknown) => (status as { state: string }).state === "ready";

/** The hold of the clock before a byte is sent. */
const lines = wrong.split("\n");
const line = lines.findIndex((each) => each.includes("_delay_us(120)"));
const delay = { line, character: (lines[line] ?? "").indexOf("120") };

test("what only a run of the whole firmware shows is told when it is known, hovers are answered meanwhile, and an edit takes it back", async () => {
  const session = await sessionOver({ "main.c": wrong }, { status: true });
  await session.open("main.c", wrong);
  await session.status(isReady);

  // At least 100 us: The PS/2 Mouse/Keyboard Protocol, Host-to-Device Communication.
  const hover = await session.hover("main.c", delay);
  expect(JSON.stringify(hover?.contents)).toContain("100 us");
  const told = () => session.published.flatMap(({ diagnostics }) => diagnostics.map(({ code }) => code));
  expect(told()).toEqual([]);

  const [fault, ...more] = await session.diagnostics("main.c", isFaulty);
  expect(more).toEqual([]);
  // The bytes that the PC gets go out there; an error: Language Server Protocol, DiagnosticSeverity.
  expect(fault).toMatchObject({
    severity: 1,
    range: { start: { line: lines.findIndex((each) => each.includes("report[report_at++]")) } },
  });
  // So fast that one report cannot hold its counts.
  expect(fault?.message).toContain("stroke flick");

  const at = lines.findIndex((each) => each.includes("first->dx = first->dy = 0;"));
  await session.change("main.c", 2, keeps, {
    start: { line: at, character: 0 },
    end: { line: at, character: (lines[at] ?? "").length },
  });
  await session.diagnostics("main.c", isClean);
  await session.change("main.c", 3, wrong);
  await session.diagnostics("main.c", isFaulty);
  await session.change("main.c", 4, right);
  await session.diagnostics("main.c", isClean);
  expect(await session.end()).toBe(0);
});
