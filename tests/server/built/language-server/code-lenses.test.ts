import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import type { CodeLens } from "vscode-languageserver/node";
import type {
  LineValuesAnswer,
  MovementSubject,
  OfferedMovement,
} from "../../../../server/language-server/client-messages/lenses.ts";
import type { Firmware } from "../../../../server/language-server/client-messages/runs.ts";
import { encoderFirmware, rightMark, slowFirmware, wrongMark } from "../encoder-firmware.ts";
import type { Session } from "./session.ts";
import { sessionOver } from "./sessions.ts";

const withCommands = { status: true, lensCommands: true };
const right = encoderFirmware(rightMark);
const wrong = encoderFirmware(wrongMark);

function lensesOf(session: Session, name: string): Promise<readonly CodeLens[]> {
  return session.request("textDocument/codeLens", { textDocument: { uri: session.uri(name) } });
}

/** Lenses once they are as wanted, asked again each time the server says that there is more to show. */
async function lensesOnce(
  session: Session,
  name: string,
  wanted: (titles: readonly string[]) => boolean,
): Promise<readonly CodeLens[]> {
  for (;;) {
    const refreshed = session.refreshed();
    const lenses = await lensesOf(session, name);
    if (wanted(titlesOf(lenses))) return lenses;
    await refreshed;
  }
}

function titlesOf(lenses: readonly CodeLens[]): readonly string[] {
  return lenses.map(({ command }) => command?.title ?? "");
}

const has = (part: string) => (titles: readonly string[]) => titles.some((title) => title.includes(part));

// mouse(4) of the Linux man-pages, table of the three-byte packet: byte 1 is 1 lb rb dy7 dy6 dx7 dx6, then dx5 to dx0, then dy5 to
// dy0. Left with dx 12 and dy 5: 1100000, 0001100, 0000101.
const leftAndTwelveFive = "60 0C 05";

describe("above an encoder", () => {
  test("its bytes are shown, go stale with an edit, and come anew", async () => {
    const session = await sessionOver({ "main.c": right }, withCommands);
    await session.open("main.c", right);
    const [lens] = await lensesOnce(session, "main.c", has(leftAndTwelveFive));
    expect(lens?.command?.title).toBe(
      `right 12 down 5, left pressed: ${leftAndTwelveFive}, as two-button wants`,
    );
    const lines = right.split("\n");
    expect(lens?.range.start.line).toBe(lines.findIndex((line) => line.startsWith("void encode")));
    await session.change("main.c", 2, wrong);
    expect(titlesOf(await lensesOf(session, "main.c"))).toEqual([
      `right 12 down 5, left pressed: ${leftAndTwelveFive}, as two-button wants (from before the edit)`,
    ]);
    const renewed = await lensesOnce(session, "main.c", has(`right is ${leftAndTwelveFive}`));
    expect(titlesOf(renewed)[0]).toBe(
      `right 12 down 5, left pressed: 20 0C 05, right is ${leftAndTwelveFive}`,
    );
  });

  test("a note's movement is tried, and another one that is chosen", async () => {
    const noted = right.replace("// @wire encodes", "// @wire try left=1\n// @wire encodes");
    const session = await sessionOver({ "main.c": noted }, withCommands);
    await session.open("main.c", noted);
    // dx -1 is 11111111: 1000011, 0111111, 0000000.
    const [lens] = await lensesOnce(session, "main.c", has("left 1: 43 3F 00, as two-button wants"));
    const subject: MovementSubject = lens?.command?.arguments?.[0];
    expect(subject.given).toBe("left 1");
    const offered = await session.request<readonly OfferedMovement[]>("edgewise/movements", subject);
    // 40 counts in 0.4 s are 1 in each of 100 reports a second.
    expect(offered.map(({ given }) => given)).toContain("slow-sideways, where it is fastest: right 1");
    const up = offered.find(({ given }) => given === "up 1");
    if (up === undefined) throw new Error("not offered");
    await session.request("edgewise/chooseMovement", { ...subject, movement: up.movement });
    // dy -1: 1001100, 0000000, 0111111.
    await lensesOnce(session, "main.c", has("up 1: 4C 00 3F, as two-button wants"));
    await session.change("main.c", 2, noted.replace("0x40", "0x00"));
    await lensesOnce(session, "main.c", has("up 1: 0C 00 3F, right is 4C 00 3F"));
  });

  test("each line shows what it stored in the report", async () => {
    const session = await sessionOver({ "main.c": right }, withCommands);
    await session.open("main.c", right);
    const lenses = await lensesOnce(session, "main.c", has("line by line"));
    const lens = lenses.find(({ command }) => command?.title === "line by line");
    const answer = await session.request<LineValuesAnswer>(
      "edgewise/lineValues",
      lens?.command?.arguments?.[0],
    );
    const rows = answer.kind === "page" ? answer.markdown.split("\n") : [];
    const row = (code: string) => rows.find((each) => each.includes(code)) ?? "";
    expect(row("out[0] =")).toMatch(/=> byte 1 60$/);
    expect(row("out[1] =")).toMatch(/=> byte 2 0C$/);
    expect(row("out[2] =")).toMatch(/=> byte 3 05$/);
    expect(row("void encode")).not.toContain("=>");
  });

  test("one that does not end says so", async () => {
    const endless = encoderFirmware(rightMark, "for (;;) { }");
    const session = await sessionOver({ "main.c": endless }, withCommands);
    await session.open("main.c", endless);
    await lensesOnce(session, "main.c", has("could not be tried: one call takes"));
  });

  test("lenses are answered while a long run goes on", async () => {
    const slow = slowFirmware(rightMark);
    const session = await sessionOver({ "main.c": slow }, withCommands);
    await session.open("main.c", slow);
    await session.status((status) => (status as { state: string }).state === "ready");
    const titles = titlesOf(await lensesOf(session, "main.c"));
    expect(new Set(titles)).toEqual(new Set(["two-button: not tried yet"]));
  });

  test("a client that does not know the commands gets text", async () => {
    const session = await sessionOver({ "main.c": right }, { status: true });
    await session.open("main.c", right);
    const lenses = await lensesOnce(session, "main.c", has(leftAndTwelveFive));
    expect(lenses.map(({ command }) => command?.command)).toEqual([""]);
  });
});

describe("above a decoder and the whole firmware", () => {
  const folder = join("sample-workspace", "ferry-c");
  const files = Object.fromEntries(
    readdirSync(folder).map((name) => [name, readFileSync(join(folder, name), "utf8")]),
  );

  test("a movement is taken apart, runs have their verdict, and a run can be chosen", async () => {
    const session = await sessionOver(files, withCommands);
    for (const name of ["main.c", "ps2.c"]) await session.open(name, files[name] ?? "");
    await lensesOnce(
      session,
      "ps2.c",
      has("right 12 down 5, left pressed: right 12 down 5, left pressed, as ps2-standard wants"),
    );
    const [lens] = await lensesOnce(session, "main.c", has("plain mouse at rts-toggle, all-at-once: passed"));
    const { shown, ...on } = lens?.command?.arguments?.[0] ?? {};
    expect(shown).toEqual({ mouse: "plain", pc: "rts-toggle", stroke: "all-at-once" });
    const [offered] = await session.request<readonly Firmware[]>("edgewise/firmwares", {});
    expect(offered?.project).toBe(on.project);
    expect(offered?.strokes.map(({ name }) => name)).toContain("circle");
    const choice = { mouse: "plain", pc: "patient", stroke: "circle" };
    await session.request("edgewise/chooseRun", { ...on, choice });
    await lensesOnce(session, "main.c", has("plain mouse at patient, circle: passed"));
    await session.change("main.c", 2, `\n${files["main.c"]}`);
    const stale = titlesOf(await lensesOf(session, "main.c"));
    expect(stale).toContain("plain mouse at patient, circle: passed (from before the edit)");
    await lensesOnce(session, "main.c", (titles) =>
      titles.every((title) => !title.includes("before the edit")),
    );
  });

  test("a fault of a run is told", async () => {
    // A line rate far from 1200: ATmega328P datasheet, baud rate equations, U2X0 = 0.
    const broken = Object.fromEntries(
      Object.entries(files).map(([name, text]) => [name, text.replace("UBRR0 = DIVISOR", "UBRR0 = 51")]),
    );
    const session = await sessionOver(broken, withCommands);
    await session.open("main.c", broken["main.c"] ?? "");
    const lenses = await lensesOnce(session, "main.c", has("all-at-once: "));
    expect(titlesOf(lenses)[0]).toMatch(
      /plain mouse at rts-toggle, all-at-once: (\d+ faults, first|1 fault): /,
    );
  });
});
