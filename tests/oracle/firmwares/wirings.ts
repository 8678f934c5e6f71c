import type { Style } from "../../firmwares/planted/planted-fault.ts";
import type { Around } from "./run-compiled.ts";

const inverting = { dtr: undefined, shifter: "inverting" } as const;

/** As the notes and edgewise.json of the styles have it. */
export const wirings: Readonly<Record<Style, Around>> = {
  "busy-wait-c": {
    layout: "five-byte",
    wiring: {
      ...inverting,
      clock: "PC0",
      data: "PC1",
      hasExternalPullUps: true,
      transmit: "PD1",
      rts: "PD2",
    },
  },
  // 20, 22, TX of USART 2 and 24 on the board of the ATmega2560.
  "class-sketch": {
    layout: "two-button",
    wiring: {
      ...inverting,
      clock: "PD1",
      data: "PA0",
      hasExternalPullUps: false,
      transmit: "PH1",
      rts: "PA2",
    },
  },
  "clock-interrupt-c": {
    layout: "middle-button",
    wiring: {
      ...inverting,
      clock: "PD3",
      data: "PD4",
      hasExternalPullUps: false,
      transmit: "PD1",
      rts: "PB0",
    },
  },
  "remote-polling-c": {
    layout: "middle-button",
    wiring: {
      ...inverting,
      clock: "PD5",
      data: "PD6",
      hasExternalPullUps: false,
      transmit: "PB1",
      rts: "PB2",
    },
  },
  "tiny-usi": {
    layout: "two-button",
    wiring: {
      clock: "PB2",
      data: "PB0",
      hasExternalPullUps: true,
      transmit: "PB4",
      rts: "PB3",
      dtr: undefined,
      shifter: "none",
    },
  },
  "usart-ring-cpp": {
    layout: "wheel",
    wiring: {
      ...inverting,
      clock: "PE4",
      data: "PE5",
      hasExternalPullUps: false,
      transmit: "PD3",
      rts: "PK0",
    },
  },
};
