import type { AvrChip } from "../../model/chips/chip.ts";
import { boardPin } from "../../model/chips.ts";
import { pinLevel } from "../../model/rs232.ts";
import type { Wires as WireNotes } from "../../notes/wires.ts";
import type { Cause, Level } from "../wires/edge.ts";
import type { Drive } from "../wires/open-collector.ts";
import type { Wires } from "../wires/wires.ts";
import type { Chip } from "./chip.ts";
import type { PinDrive, PortPin } from "./port.ts";

type Shifter = "inverting" | "none";

/** Which pins of the chip are on which wires; names as `PD2`. */
export interface Wiring {
  readonly clock: string;
  readonly data: string;
  /** Resistors on the board, besides those of the mouse and those that the firmware switches on in the chip. */
  readonly hasExternalPullUps: boolean;
  /** The pin that reports leave by: a USART's or one that the firmware moves itself. */
  readonly transmit: string;
  /** The pin on which the USART that sends hears the PC; left out where nothing is connected to it. */
  readonly receive?: string | undefined;
  readonly rts: string | undefined;
  readonly dtr: string | undefined;
  readonly shifter: Shifter;
}

export type WiringResult =
  | { readonly kind: "wiring"; readonly wiring: Wiring }
  /** What has to be said in wire notes first, one sentence. */
  | { readonly kind: "unknown"; readonly message: string };

/** The wiring that notes, or facts in their place, tell; `unknown` where a pin is missing or not on the chip. */
export function wiringOf(model: AvrChip, { ps2, serial }: WireNotes): WiringResult {
  const missing: string[] = [];
  const pin = (what: string, name: string | undefined): string => {
    const found = name === undefined ? undefined : boardPin(model, name);
    if (found === undefined)
      missing.push(name === undefined ? what : `${what} (${name} is no pin of ${model.printedName})`);
    return found?.name ?? "";
  };
  const optional = (what: string, name: string | undefined) =>
    name === undefined ? undefined : pin(what, name);
  const uart = serial.uart?.value;
  const usart = model.usarts.find(({ number }) => number === uart);
  if (uart !== undefined && usart === undefined) {
    missing.push(`uart (${model.printedName} has no USART ${uart})`);
  }
  const wiring = {
    clock: pin("ps2 clock", ps2.clock?.value),
    data: pin("ps2 data", ps2.data?.value),
    hasExternalPullUps: ps2.pullups?.value === "external",
    transmit: uart === undefined ? pin("serial uart or tx", serial.tx?.value) : (usart?.txPin ?? ""),
    receive: usart?.rxPin,
    rts: optional("serial rts", serial.rts?.value),
    dtr: optional("serial dtr", serial.dtr?.value),
    shifter: serial.shifter?.value ?? "inverting",
  };
  const { receive, ...others } = wiring;
  const isTaken = [wiring.clock, wiring.data, wiring.rts, wiring.dtr].includes(receive);
  if (missing.length === 0) return { kind: "wiring", wiring: isTaken ? others : wiring };
  return {
    kind: "unknown",
    message: `the wiring is not known: ${missing.join(", ")}; say it in a note @wire`,
  };
}

/**
 * Connects a chip's pins to the wires of the bench, in both directions. A pin of the wiring that the chip lacks is a
 * fault of the caller and throws.
 */
export function connect(chip: Chip, wiring: Wiring, wires: Wires): void {
  connectOpenCollector(chip, pinNamed(chip, wiring.clock), wires.clock, wiring.hasExternalPullUps);
  connectOpenCollector(chip, pinNamed(chip, wiring.data), wires.data, wiring.hasExternalPullUps);
  connectTransmit(chip, pinNamed(chip, wiring.transmit), wires, wiring.shifter);
  if (wiring.receive !== undefined)
    connectReceive(chip, pinNamed(chip, wiring.receive), wires.txd, wiring.shifter);
  if (wiring.rts !== undefined) connectControl(chip, pinNamed(chip, wiring.rts), wires.rts, wiring.shifter);
  if (wiring.dtr !== undefined) connectControl(chip, pinNamed(chip, wiring.dtr), wires.dtr, wiring.shifter);
}

function pinNamed(chip: Chip, name: string): PortPin {
  const pin = chip.ports.pin(name);
  if (pin === undefined) throw new Error(`${chip.model.printedName} has no pin ${name}`);
  return pin;
}

function causeOf({ core }: Chip): Cause {
  const { place: at, handlerRun: run, isInEvent } = core;
  return { party: "firmware", at, ...(isInEvent || run === undefined ? {} : { run }) };
}

function connectOpenCollector(
  chip: Chip,
  { port, bit }: PortPin,
  wire: Wires["clock"],
  hasExternalPullUp: boolean,
): void {
  if (hasExternalPullUp) wire.pullUp("pull-up", true, { party: "pull-up", at: undefined });
  const follow = (drive: PinDrive) => {
    const cause = causeOf(chip);
    wire.pullUp("firmware", drive === "pulled-up", cause);
    wire.drive("firmware", driveOfWire(drive), cause);
  };
  port.onDrive((changed, drive) => {
    if (changed === bit) follow(drive);
  });
  wire.onEdge(({ level }) => chip.core.follow(() => port.setInput(bit, level)));
  port.setInput(bit, wire.level);
  follow(port.driveOf(bit));
}

function driveOfWire(drive: PinDrive): Drive {
  return drive === "low" || drive === "high" ? drive : "released";
}

function connectTransmit(chip: Chip, { port, bit }: PortPin, wires: Wires, shifter: Shifter): void {
  const mark = pinLevel("mark", shifter);
  const follow = (drive: PinDrive) => wires.rxd.drive(lineLevel(drive, mark), causeOf(chip));
  port.onDrive((changed, drive) => {
    if (changed === bit) follow(drive);
  });
  follow(port.driveOf(bit));
}

/** A pin that nothing drives leaves the line at mark: common practice, no source. */
function lineLevel(drive: PinDrive, mark: Level): Level {
  if (drive === "floating") return 1;
  return (drive === "low" ? 0 : 1) === mark ? 1 : 0;
}

function connectReceive(chip: Chip, { port, bit }: PortPin, wire: Wires["txd"], shifter: Shifter): void {
  const follow = (level: Level) => port.setInput(bit, pinLevel(level === 1 ? "mark" : "space", shifter));
  wire.onEdge(({ level }) => chip.core.follow(() => follow(level)));
  follow(wire.level);
}

function connectControl(chip: Chip, { port, bit }: PortPin, wire: Wires["rts"], shifter: Shifter): void {
  const follow = (level: Level) => port.setInput(bit, pinLevel(level === 1 ? "off" : "on", shifter));
  wire.onEdge(({ level }) => chip.core.follow(() => follow(level)));
  follow(wire.level);
}
