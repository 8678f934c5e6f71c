import type { LayoutName } from "../../../src-core/model/layouts/layout.ts";

/**
 * The tables of the documents, typed from them by hand: a row is a byte, its bits from the highest to the lowest.
 * `0` and `1` are constant, `-` is not looked at, `xo` says that x did not fit; `dxa` and `dxb` add up.
 */
interface BitTable {
  readonly rows: readonly string[];
  /** A button that is down is a 0. */
  readonly buttonsActiveLow: boolean;
  /** The last byte may be missing while all buttons in it are up. */
  readonly lastIsOptional: boolean;
  /** What may stand for a longer movement: the ends of its range and, below them, those that other texts name. */
  readonly ends: Readonly<Record<string, readonly number[]>>;
}

/** mouse(4), Linux man-pages 6.03: table of the three-byte packet. */
const threeBytes = [
  "1 lb  rb  dy7 dy6 dx7 dx6", //
  "0 dx5 dx4 dx3 dx2 dx1 dx0",
  "0 dy5 dy4 dy3 dy2 dy1 dy0",
];
/** PC-8801 Memorandum, serial mouse: -128 to 127. */
const eightBits = [127, -127, -128];
/** Linux kernel documentation, input/sentelic, section A; moused.c: four bits in two's complement. */
const fourBits = [7, -7, -8];

/** psm(4): data packet; HT82M35X data sheet, p. 3. */
const plainPs2 = [
  "yo xo ys xs 1  mb rb lb", //
  "x7 x6 x5 x4 x3 x2 x1 x0",
  "y7 y6 y5 y4 y3 y2 y1 y0",
];
/** psm(4) says -256 to 255; other texts -255 to 255. */
const nineBits = [255, -255, -256];

export const bitTables: Readonly<Record<LayoutName, BitTable>> = {
  "two-button": {
    rows: threeBytes,
    buttonsActiveLow: false,
    lastIsOptional: false,
    ends: { x: eightBits, y: eightBits },
  },
  // mouse(4): "the 4th byte has value 0x20 (or at least has the 0x20 bit set)".
  "middle-button": {
    rows: [...threeBytes, "0 mb - - - - -"],
    buttonsActiveLow: false,
    lastIsOptional: true,
    ends: { x: eightBits, y: eightBits },
  },
  // EM84520 data sheet, p. 3; sermouse.c and moused.c: decode. Bit 5 is a side button on some.
  wheel: {
    rows: [...threeBytes, "0 - mb z3 z2 z1 z0"],
    buttonsActiveLow: false,
    lastIsOptional: false,
    ends: { x: eightBits, y: eightBits, wheel: fourBits },
  },
  // mouse(4): table of the five-byte packet. It draws d7 of the movements as 0, though it calls them two's
  // complement; FreeBSD's mouse(4) gives all eight bits as a signed value. Two of them add up.
  "five-byte": {
    rows: [
      "1    0    0    0    0    lb   mb   rb",
      "dxa7 dxa6 dxa5 dxa4 dxa3 dxa2 dxa1 dxa0",
      "dya7 dya6 dya5 dya4 dya3 dya2 dya1 dya0",
      "dxb7 dxb6 dxb5 dxb4 dxb3 dxb2 dxb1 dxb0",
      "dyb7 dyb6 dyb5 dyb4 dyb3 dyb2 dyb1 dyb0",
    ],
    buttonsActiveLow: true,
    lastIsOptional: false,
    ends: { x: [...eightBits, 254, -254], y: [...eightBits, 254, -254] },
  },
  "ps2-standard": {
    rows: plainPs2,
    buttonsActiveLow: false,
    lastIsOptional: false,
    ends: { x: nineBits, y: nineBits },
  },
  // HT82M35X data sheet, p. 3: eight bits; PAW3402 data sheet, 6.2: -7 to 7 in practice.
  "ps2-wheel": {
    rows: [...plainPs2, "z7 z6 z5 z4 z3 z2 z1 z0"],
    buttonsActiveLow: false,
    lastIsOptional: false,
    ends: { x: nineBits, y: nineBits, wheel: [...fourBits, 127, -127, -128] },
  },
  // HT82M35X data sheet, p. 3; Linux kernel documentation, input/sentelic, section A.
  "ps2-five-button": {
    rows: [...plainPs2, "0 0 b5 b4 z3 z2 z1 z0"],
    buttonsActiveLow: false,
    lastIsOptional: false,
    ends: { x: nineBits, y: nineBits, wheel: fourBits },
  },
};

/** The tables' names for the fields that notes name; the digits of a bit's place are left out. */
const movements: Readonly<Record<string, string>> = {
  ...{ dx: "x", dxa: "x", dxb: "x", x: "x", xs: "x" },
  ...{ dy: "y", dya: "y", dyb: "y", y: "y", ys: "y" },
  z: "wheel",
};
const buttons: Readonly<Record<string, string>> = {
  ...{ lb: "left", rb: "right", mb: "middle", b4: "button4", b5: "button5" },
};
const flags: Readonly<Record<string, string>> = { xo: "x", yo: "y" };

/** What a table reads in a report. */
export interface TableReading {
  readonly movements: ReadonlyMap<string, number>;
  readonly buttons: ReadonlyMap<string, boolean>;
  /** Movements that are flagged as too long. */
  readonly overflow: ReadonlySet<string>;
  /** `byte.bit` of each constant bit that is not as it should be. */
  readonly wrongConstants: readonly string[];
}

/** Reads as many bytes as there are. */
export function readByTable(layout: LayoutName, bytes: readonly number[]): TableReading {
  const { rows, buttonsActiveLow } = bitTables[layout];
  const parts = new Map<string, { field: string; value: number; width: number }>();
  const pressed = new Map<string, boolean>();
  const overflow = new Set<string>();
  const wrongConstants: string[] = [];
  for (const [index, byte] of bytes.entries()) {
    const cells = (rows[index] ?? "").split(/\s+/);
    for (const [column, cell] of cells.entries()) {
      const bit = cells.length - 1 - column;
      const level = (byte >> bit) & 1;
      const button = buttons[cell];
      const flag = flags[cell];
      if (cell === "0" || cell === "1") {
        if (level !== Number(cell)) wrongConstants.push(`${index}.${bit}`);
      } else if (button !== undefined) {
        pressed.set(button, (level === 1) !== buttonsActiveLow);
      } else if (flag !== undefined) {
        if (level === 1) overflow.add(flag);
      } else if (cell !== "-") {
        addBit(parts, cell, level);
      }
    }
  }
  const sums = new Map<string, number>();
  for (const { field, value, width } of parts.values()) {
    const signed = value >= 2 ** (width - 1) ? value - 2 ** width : value;
    sums.set(field, (sums.get(field) ?? 0) + signed);
  }
  return { movements: sums, buttons: pressed, overflow, wrongConstants };
}

/** `dx7` is bit 7 of dx; `xs`, the sign of x, stands above its eight bits. */
function addBit(
  parts: Map<string, { field: string; value: number; width: number }>,
  cell: string,
  level: number,
): void {
  const [, name = "", digit] = /^([a-z]+)(\d?)$/.exec(cell) ?? [];
  const field = movements[name];
  if (field === undefined) throw new Error(`the tables have no ${cell}`);
  const place = digit === "" ? 8 : Number(digit);
  const key = digit === "" ? field : name;
  const part = parts.get(key) ?? { field, value: 0, width: 0 };
  parts.set(key, { field, value: part.value + level * 2 ** place, width: Math.max(part.width, place + 1) });
}

/** Names of the fields that a table has. */
export function fieldsOf(layout: LayoutName): { readonly movements: string[]; readonly buttons: string[] } {
  const { rows } = bitTables[layout];
  const reading = readByTable(
    layout,
    rows.map(() => 0),
  );
  return { movements: [...reading.movements.keys()], buttons: [...reading.buttons.keys()] };
}
