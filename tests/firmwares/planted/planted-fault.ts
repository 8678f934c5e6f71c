/** The firmwares of this folder, each in a style of its own. */
export const styles = [
  "busy-wait-c",
  "class-sketch",
  "clock-interrupt-c",
  "remote-polling-c",
  "tiny-usi",
  "usart-ring-cpp",
] as const;

export type Style = (typeof styles)[number];

/** A text in one file of a style, which occurs once, and what stands there in the wrong version. */
export interface Edit {
  readonly file: string;
  readonly find: string;
  readonly put: string;
}

/** A line of the wrong version: the first that holds `text`, behind the first place of `after` where that is said. */
export interface Line {
  readonly file: string;
  readonly text: string;
  readonly after?: string;
}

/**
 * One thing wrong in a style that is right otherwise, and what has to be said of it. Written from what the fault does on
 * the wires, by the documents that the rule names, before the bench was asked.
 */
export interface PlantedFault {
  readonly style: Style;
  /** What is wrong, in the words of somebody who looks for it. */
  readonly title: string;
  readonly edits: readonly Edit[];
  readonly rule: string;
  /** Where it has to be told, at one of these; for what the code does not have, where it would belong. */
  readonly line: Line | readonly Line[];
  /** Who has to tell it: a run where nothing is said, or what the text shows. */
  readonly foundBy?: "check";
  /** What has to be measured, in the unit of the finding, and where the number comes from. */
  readonly measured?: { readonly least: number; readonly most: number; readonly why: string };
  /** Where it shows; `plain`, `rts-toggle` and `nudge` where nothing is said. */
  readonly mouse?: string;
  readonly pc?: string;
  readonly stroke?: string;
}

/** Lines at which a style pulls the clock, moves data and makes the start bit of a byte to the PC. */
export const pullsClock: Readonly<Record<Style, Line>> = {
  "busy-wait-c": { file: "ps2.c", text: "pull(CLK);", after: "static void hold" },
  "class-sketch": { file: "OpenCollector.h", text: "*mode |= mask;", after: "void pullLow" },
  "clock-interrupt-c": { file: "ps2.c", text: "DDRD |= _BV(CLOCK);" },
  "remote-polling-c": { file: "mouse.c", text: "DDRD |= _BV(CLOCK_PIN);" },
  "tiny-usi": { file: "sender.c", text: "DDRB |= _BV(pin);" },
  "usart-ring-cpp": { file: "port.cpp", text: "DDRE |= _BV(Bit);", after: "static void low" },
};

/** Where the clock is let go: while the mouse itself holds it low, the wires do not show who else pulls. */
export const freesClock = {
  "clock-interrupt-c": { file: "ps2.c", text: "DDRD &= ~_BV(CLOCK);" },
  "usart-ring-cpp": { file: "port.cpp", text: "DDRE &= ~_BV(Bit);", after: "static void release" },
} as const satisfies { readonly [style in Style]?: Line };

export const pullsData: Readonly<Record<Style, Line>> = {
  ...pullsClock,
  "busy-wait-c": { file: "ps2.c", text: "pull(DAT);", after: "static uint8_t put_bit" },
  "clock-interrupt-c": { file: "ps2.c", text: "DDRD |= _BV(DATA);", after: "void data_low" },
  "remote-polling-c": { file: "mouse.c", text: "DDRD |= _BV(DATA_PIN);", after: "void data_down" },
};

export const freesData: Readonly<Record<Style, Line>> = {
  "busy-wait-c": { file: "ps2.c", text: "let_go(DAT);", after: "static uint8_t put_bit" },
  "class-sketch": { file: "OpenCollector.h", text: "*mode &= ~mask;", after: "void release" },
  "clock-interrupt-c": { file: "ps2.c", text: "DDRD &= ~_BV(DATA);", after: "void data_free" },
  "remote-polling-c": { file: "mouse.c", text: "DDRD &= ~_BV(DATA_PIN);", after: "void data_up" },
  "tiny-usi": { file: "sender.c", text: "DDRB &= ~_BV(pin);" },
  "usart-ring-cpp": { file: "port.cpp", text: "DDRE &= ~_BV(Bit);", after: "static void release" },
};

/** The byte is handed to the USART, or its start bit is made. */
export const sendsReport: Readonly<Record<Style, Line>> = {
  "busy-wait-c": { file: "pc.c", text: "UDR0 = report[5 - left_to_send];" },
  "class-sketch": { file: "SerialMouse.cpp", text: "port.write(report, bytes);" },
  "clock-interrupt-c": { file: "pc.c", text: "UDR0 = out[out_at++];" },
  "remote-polling-c": { file: "serial.c", text: "PORTB &= ~_BV(TX_PIN);", after: "uint16_t until" },
  "tiny-usi": { file: "line.c", text: "PORTB |= _BV(TX);" },
  "usart-ring-cpp": { file: "uart.cpp", text: "UDR1 = toSend.take();" },
};

/** A byte of the mouse is put to those of its report. */
export const collectsReport: Readonly<Record<Style, Line>> = {
  "busy-wait-c": { file: "main.c", text: "packet[length++] = byte;" },
  "class-sketch": { file: "Ps2Mouse.cpp", text: "packet[length++] = value;" },
  "clock-interrupt-c": { file: "mouse.c", text: "packet[packet_length++] = byte;" },
  "remote-polling-c": { file: "mouse.c", text: "read_byte(&bytes[" },
  "tiny-usi": { file: "main.c", text: "packet[packet_length++] = byte;" },
  "usart-ring-cpp": { file: "mouse.cpp", text: "packet[length++] = byte;" },
};

/** Most bits of a byte from the mouse are read here; the hardware of the ATtiny reads them by itself. */
export const readsBits = {
  "busy-wait-c": { file: "ps2.c", text: "if (is_high(DAT)) {", after: "value >>= 1;" },
  "class-sketch": { file: "OpenCollector.h", text: "return *input & mask;" },
  "clock-interrupt-c": { file: "ps2.c", text: "bool level = PIND & _BV(DATA);" },
  "remote-polling-c": { file: "mouse.c", text: "level = PIND & _BV(DATA_PIN) ? 1 : 0;" },
  "usart-ring-cpp": { file: "port.cpp", text: "static bool isHigh()" },
} as const satisfies { readonly [style in Style]?: Line };

/** RTS is read: what does not come when it goes on belongs there. */
export const looksAtRts = {
  "class-sketch": { file: "SerialMouse.h", text: "digitalRead(rtsPin) == LOW" },
  "clock-interrupt-c": { file: "pc.c", text: "!(PINB & _BV(RTS))", after: "void pc_step" },
  "remote-polling-c": { file: "serial.c", text: "!(PINB & _BV(RTS_PIN))" },
  "tiny-usi": { file: "main.c", text: "bool on = PINB & _BV(RTS);" },
  "usart-ring-cpp": { file: "main.cpp", text: "return !(PINK & _BV(PK0));" },
} as const satisfies { readonly [style in Style]?: Line };
