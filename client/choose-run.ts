import { type QuickPickItem, window } from "vscode";
import {
  type Firmware,
  type FirmwaresParams,
  firmwaresRequest,
  type Named,
  type RunParams,
} from "../server/language-server/client-messages/runs.ts";
import type { Checker } from "./checker.ts";
import { pickOne } from "./pick-one.ts";

type Around = Omit<RunParams, "project">;

/** Asks which firmware of the workspace is meant, where there are several; undefined where none was chosen. */
export async function chooseFirmware(checker: Checker, title: string): Promise<Firmware | undefined> {
  const document = window.activeTextEditor?.document;
  const params: FirmwaresParams = document === undefined ? {} : { near: document.uri.toString() };
  const firmwares = await checker.request<readonly Firmware[]>(firmwaresRequest, params);
  if (firmwares === undefined) return undefined;
  if (firmwares.length === 0) {
    void window.showInformationMessage("There is no firmware in this workspace: no .c, .cpp or .ino file.");
    return undefined;
  }
  const [only, other] = firmwares;
  if (other === undefined) return only;
  const items = firmwares.map((firmware) => ({
    label: firmware.name,
    description: firmware.project,
    firmware,
  }));
  const picked = await window.showQuickPick(items, { title, placeHolder: "Which firmware" });
  return picked?.firmware;
}

/** Asks for a stroke, a mouse and a PC; undefined where one was not chosen. */
export async function chooseRun(checker: Checker, title: string): Promise<RunParams | undefined> {
  const firmware = await chooseFirmware(checker, title);
  if (firmware === undefined) return undefined;
  const chosen = await chooseAround(firmware, title);
  return chosen && { project: firmware.project, ...chosen };
}

/** Asks for what a firmware is run with; `shown` is the run that is shown now. */
export async function chooseAround(
  { strokes, mice, pcs }: Firmware,
  title: string,
  shown?: Around,
): Promise<Around | undefined> {
  const stroke = await chooseNamed(strokes, `${title} (1/3)`, "What the hand does", shown?.stroke);
  if (stroke === undefined) return undefined;
  const mouse = await chooseNamed(mice, `${title} (2/3)`, "Which mouse", shown?.mouse);
  if (mouse === undefined) return undefined;
  const pc = await chooseNamed(pcs, `${title} (3/3)`, "Which PC", shown?.pc);
  return pc === undefined ? undefined : { stroke, mouse, pc };
}

/** Asks for one of several things by name. */
async function chooseNamed(
  among: readonly Named[],
  title: string,
  placeHolder: string,
  shown: string | undefined,
): Promise<string | undefined> {
  const items = among.map(({ name, title: detail }): QuickPickItem => ({ label: name, detail }));
  const shownNow = items.find(({ label }) => label === shown);
  const picked = await pickOne(items, { title, placeHolder, matchOnDetail: true }, shownNow);
  return picked?.label;
}
