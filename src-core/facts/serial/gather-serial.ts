import type { Chip } from "../../model/chips/chip.ts";
import { quantity } from "../../model/quantities.ts";
import { layouts } from "../../model/report-layouts.ts";
import { pinLevel } from "../../model/rs232.ts";
import type { NoteFacts } from "../../notes/note-facts.ts";
import type { SerialWords } from "../../notes/wires.ts";
import type { Program } from "../../reader/program/program.ts";
import { isHandler } from "../board/handlers.ts";
import type { PinName } from "../pins/pin-change.ts";
import { pinOfWord } from "../pins/pin-names.ts";
import type { Walk } from "../walk/events.ts";
import { bitBangedBytes } from "./bit-banged.ts";
import { ControlLines } from "./control-lines.ts";
import { coreSetUps } from "./core-set-ups.ts";
import { deafSendings } from "./deaf.ts";
import { isHeardByInterrupt, type MouseHost } from "./forwarding.ts";
import { findIdentification } from "./identification.ts";
import { LineSteps } from "./line-steps.ts";
import { Line, type MousePort, mousePort } from "./mouse-port.ts";
import { serialConstants } from "./noted-constants.ts";
import { sentOn } from "./sent.ts";
import type { SerialFacts, SpaceAtRest } from "./serial-facts.ts";
import { spacesAtRest } from "./spaces.ts";
import { type Step, stepsIn } from "./steps.ts";
import { usartSetUps } from "./usart-set-ups.ts";
import { usartRegisters } from "./usarts.ts";
import { mouseSetUps, wantedBaud, wantedLine } from "./wanted.ts";

/** Data bits of most layouts, where neither note nor text tells. */
const USUAL_DATA_BITS = layouts["two-button"].dataBits;

export function gatherSerial(
  program: Program,
  notes: NoteFacts,
  walk: Walk,
  clockHz: number | undefined,
  host: MouseHost,
): SerialFacts {
  const { chip, model } = program;
  const { serial } = notes.wires;
  const registers = usartRegisters(chip);
  const setsUp = (event: Step["event"]): boolean =>
    event.kind === "register-write" ? registers.has(event.register.name) : event.name.endsWith(".begin");
  const setUps = walk.entries
    .filter(({ entry }) => !isHandler(entry))
    .flatMap(({ events }) => {
      const steps = stepsIn(events, setsUp);
      return [...usartSetUps(steps, walk, chip, model), ...coreSetUps(steps, walk, chip, model)];
    });
  const line = wantedLine(serial);
  const search = {
    pin: serial.tx && pinOfWord(chip, serial.tx.value),
    dataBits: (line?.kind === "format" ? line.format : line?.layout)?.dataBits ?? USUAL_DATA_BITS,
    steps: new LineSteps(clockHz),
  };
  const bitBanged = serial.uart === undefined ? bitBangedBytes(walk, search) : [];
  const ofMouse = mouseSetUps(serial, setUps);
  const controls = new ControlLines(serial, walk, program);
  const port = mousePort(serial, chip, ofMouse, bitBanged);
  const spacesOf = (of: MousePort | undefined): readonly SpaceAtRest[] => {
    const pin = of && pinOfPort(of, serial, chip);
    if (pin === undefined || serial.shifter === undefined) return [];
    const frame = (line?.kind === "format" ? line.format : line?.layout)?.dataBits ?? USUAL_DATA_BITS;
    const baud = wantedBaud(serial)?.baud ?? quantity("serial.baud")?.typical ?? 0;
    // Twice the byte, so that a start bit and its byte are not taken for rest.
    const mostUs = (2 * (frame + 1) * 1e6) / baud;
    return spacesAtRest(walk, pin, pinLevel("space", serial.shifter.value), mostUs, chip, clockHz);
  };
  const sent = port && sentOn(new Line(port, chip, model, search), walk, controls, clockHz, host, chip);
  return {
    setUps,
    mouseSetUps: ofMouse,
    wantedBaud: wantedBaud(serial),
    wantedLine: line,
    bitBanged,
    constants: serialConstants(notes),
    sent,
    identification: findIdentification(program, notes.wires, sent),
    spaces: spacesOf(port),
    deaf:
      port?.kind === "pin" && host.clock !== undefined && isHeardByInterrupt(walk, host.clock, chip)
        ? deafSendings(walk, port.pin, host.clock, clockHz)
        : [],
    controlLines: controls.lines,
  };
}

/** The pin that sends: the one that was said, or that of the UART. */
function pinOfPort(port: MousePort, { tx }: SerialWords, chip: Chip | undefined): PinName | undefined {
  if (port.kind === "pin") return port.pin;
  if (tx !== undefined) return pinOfWord(chip, tx.value);
  if (port.kind !== "uart" || chip?.kind !== "avr") return undefined;
  return chip.usarts.find(({ number }) => number === port.uart)?.txPin;
}
