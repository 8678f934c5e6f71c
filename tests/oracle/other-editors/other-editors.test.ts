import { execFileSync, spawn } from "node:child_process";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join, resolve } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { encoderFirmware, rightMark } from "../../server/built/encoder-firmware.ts";
import { faultyFirmware } from "../../server/built/sample-firmware.ts";

/** What a probe found in an editor. */
interface Found {
  readonly error?: string;
  readonly diagnostics: readonly { readonly line: number; readonly message: string }[];
  readonly hover: string;
  readonly actions: readonly string[];
  readonly lenses: readonly string[];
  readonly drawn: readonly string[];
}

let scratch = "";
const probes = resolve("tests/oracle/other-editors/probes");

beforeAll(() => {
  execFileSync(process.execPath, ["esbuild.config.mjs"], { stdio: ["ignore", "inherit", "inherit"] });
  scratch = mkdtempSync(join(tmpdir(), "edgewise-editors-"));
  mkdirSync(join(scratch, "bin"));
  // As the page says.
  symlinkSync(resolve("dist/edgewise.js"), join(scratch, "bin", "edgewise"));
  mkdirSync(join(scratch, "firmware"));
  const files = { ...faultyFirmware, "report.c": encoderFirmware(rightMark) };
  for (const [name, text] of Object.entries(files)) writeFileSync(join(scratch, "firmware", name), text);
});

afterAll(() => rmSync(scratch, { recursive: true, force: true }));

/** The configuration of the page that is written in a language. */
function configuration(language: string): string {
  const page = readFileSync("docs/other-editors.md", "utf8");
  const [, text] = new RegExp(`^\`\`\`${language}\\n(.*?)^\`\`\``, "ms").exec(page) ?? [];
  if (text === undefined) throw new Error(`the page has nothing in ${language}`);
  return text;
}

/** Runs an editor without a window in the firmware's folder; gives what its probe wrote down. */
async function foundBy(command: string, arguments_: readonly string[]): Promise<Found> {
  const written = join(scratch, `${command}.json`);
  const editor = spawn(command, arguments_, {
    cwd: join(scratch, "firmware"),
    env: {
      ...process.env,
      PATH: `${join(scratch, "bin")}${delimiter}${process.env.PATH ?? ""}`,
      HOME: scratch,
      EDGEWISE_FOUND: written,
    },
    stdio: ["ignore", "ignore", "inherit"],
  });
  await new Promise((done, failed) => {
    editor.once("exit", done);
    editor.once("error", failed);
  });
  if (!existsSync(written)) throw new Error(`${command} wrote nothing down`);
  return JSON.parse(readFileSync(written, "utf8"));
}

/** UBRR0 = 51 makes 19231 baud and 832 would make 1200: ATmega328P datasheet, baud rate equations at 16 MHz. */
function expectFault({ error, diagnostics, hover, actions }: Found): void {
  expect(error).toBeUndefined();
  const line = faultyFirmware["main.c"].split("\n").findIndex((text) => text.includes("51")) + 1;
  expect(diagnostics).toContainEqual(
    expect.objectContaining({ line, message: expect.stringContaining("19231 baud") }),
  );
  expect(hover).toContain("1200");
  expect(actions).toContain("Write divisor 832");
}

test("a client in Lua, configured as the page says, shows diagnostics, hovers, fixes and lenses", async () => {
  const init = join(scratch, "init.lua");
  writeFileSync(init, configuration("lua"));
  const probe = join(probes, "probe.lua");
  const found = await foundBy("nvim", ["--headless", "-u", init, "main.c", "-c", `luafile ${probe}`]);
  expectFault(found);
  // mouse(4) of the Linux man-pages, table of the three-byte packet: left with dx 12 and dy 5.
  const lens = "right 12 down 5, left pressed: 60 0C 05, as two-button wants";
  expect(found.lenses).toContain(lens);
  expect(found.drawn).toContain(lens);
});

test("a client in Lisp, configured as the page says, shows diagnostics, hovers and fixes", async () => {
  const init = join(scratch, "init.el");
  writeFileSync(init, configuration("elisp"));
  expectFault(await foundBy("emacs", ["--batch", "-l", init, "-l", join(probes, "probe.el")]));
});
