import { layouts } from "../../model/report-layouts.ts";
import type { NoteFacts } from "../../notes/note-facts.ts";
import type { Program } from "../../reader/program/program.ts";
import { isHandler } from "../board/handlers.ts";
import { pinOfWord } from "../pins/pin-names.ts";
import type { Walk } from "../walk/events.ts";
import { bitBangedBytes } from "./bit-banged.ts";
import { ControlLines } from "./control-lines.ts";
import { coreSetUps } from "./core-set-ups.ts";
import { Line, mousePort } from "./mouse-port.ts";
import { serialConstants } from "./noted-constants.ts";
import { sentOn } from "./sent.ts";
import type { SerialFacts } from "./serial-facts.ts";
import { stepsIn } from "./steps.ts";
import { usartSetUps } from "./usart-set-ups.ts";
import { mouseSetUps, wantedBaud, wantedLine } from "./wanted.ts";

/** Data bits of most layouts, where neither note nor text tells. */
const USUAL_DATA_BITS = layouts["two-button"].dataBits;

export function gatherSerial(
  program: Program,
  notes: NoteFacts,
  walk: Walk,
  clockHz: number | undefined,
): SerialFacts {
  const { chip, model } = program;
  const { serial } = notes.wires;
  const setUps = walk.entries
    .filter(({ entry }) => !isHandler(entry))
    .flatMap(({ events }) => {
      const steps = stepsIn(events);
      return [...usartSetUps(steps, walk, chip, model), ...coreSetUps(steps, walk, chip, model)];
    });
  const line = wantedLine(serial);
  const search = {
    pin: serial.tx && pinOfWord(chip, serial.tx.value),
    dataBits: (line?.kind === "format" ? line.format : line?.layout)?.dataBits ?? USUAL_DATA_BITS,
    clockHz,
  };
  const bitBanged = serial.uart === undefined ? bitBangedBytes(walk, search) : [];
  const ofMouse = mouseSetUps(serial, setUps);
  const controls = new ControlLines(serial, walk, program);
  const port = mousePort(serial, chip, ofMouse, bitBanged);
  return {
    setUps,
    mouseSetUps: ofMouse,
    wantedBaud: wantedBaud(serial),
    wantedLine: line,
    bitBanged,
    constants: serialConstants(notes),
    sent: port && sentOn(new Line(port, chip, model, search), walk, controls, clockHz),
    controlLines: controls.lines,
  };
}
