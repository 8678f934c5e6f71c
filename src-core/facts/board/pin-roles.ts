import type { Span } from "../../finding.ts";
import type { Chip } from "../../model/chips/chip.ts";
import type { Said, Wires } from "../../notes/wires.ts";
import type { PinName } from "../pins/pin-change.ts";
import { pinOfNumber, pinOfWord } from "../pins/pin-names.ts";
import type { SetUp } from "../serial/serial-facts.ts";

/** What a pin is used for, and who says so. */
export interface PinRole {
  readonly pin: PinName;
  /** "the PS/2 clock", "RXD of UART 0". */
  readonly role: string;
  readonly span: Span;
  /** A note or edgewise.json says it; else the code sets it up. */
  readonly said: boolean;
  /** Two roles of one line are no conflict: a software port's transmit pin is the pin that `tx=` names. */
  readonly line: "clock" | "data" | "rts" | "dtr" | "tx" | "rx" | "uart-tx" | "uart-rx";
}

export function pinRoles(
  chip: Chip | undefined,
  { ps2, serial }: Wires,
  setUps: readonly SetUp[],
): readonly PinRole[] {
  const said = (word: Said<string> | undefined, line: PinRole["line"], role: string): PinRole[] => {
    const pin = word && pinOfWord(chip, word.value);
    return word === undefined || pin === undefined ? [] : [{ pin, role, span: word.span, said: true, line }];
  };
  return [
    ...said(ps2.clock, "clock", "the PS/2 clock"),
    ...said(ps2.data, "data", "the PS/2 data line"),
    ...said(serial.rts, "rts", "RTS of the PC"),
    ...said(serial.dtr, "dtr", "DTR of the PC"),
    ...said(serial.tx, "tx", "the serial output"),
    ...setUps.flatMap((setUp) => rolesOf(chip, setUp)),
  ];
}

function rolesOf(chip: Chip | undefined, setUp: SetUp): readonly PinRole[] {
  const { port, span } = setUp;
  switch (port.kind) {
    case "uart": {
      const usart = chip?.kind === "avr" ? chip.usarts.find(({ number }) => number === port.uart) : undefined;
      if (usart === undefined) return [];
      const name = chip?.uarts?.length === 1 ? "the UART" : `UART ${port.uart}`;
      const roles: PinRole[] = [];
      if (setUp.receives) {
        roles.push({ pin: usart.rxPin, role: `RXD of ${name}`, span, said: false, line: "uart-rx" });
      }
      if (setUp.transmits) {
        roles.push({ pin: usart.txPin, role: `TXD of ${name}`, span, said: false, line: "uart-tx" });
      }
      return roles;
    }
    case "software": {
      const [rx, tx] = port.pins;
      const roles: PinRole[] = [];
      const of = `of the software serial port ${port.name}`;
      if (rx !== undefined) {
        roles.push({ pin: pinOfNumber(chip, rx), role: `RX ${of}`, span, said: false, line: "rx" });
      }
      if (tx !== undefined) {
        roles.push({ pin: pinOfNumber(chip, tx), role: `TX ${of}`, span, said: false, line: "tx" });
      }
      return roles;
    }
  }
}
