import { bitTables, readByTable } from "./bit-tables.ts";
import type { Chip } from "./chip.ts";
import type { Departure } from "./encoder-trial.ts";
import type { NotedFunction } from "./noted-function.ts";

/** Hands the decoder many reports, and compares what it makes of each with what the tables read in them. */
export function tryDecoder(subject: NotedFunction, chip: Chip): readonly Departure[] {
  const { layout, fields } = subject;
  return reports(subject).flatMap((bytes) => {
    const reading = readByTable(layout, bytes);
    const { told } = chip.call([bytes.length, ...bytes]);
    return fields.flatMap(({ field, negated }, index): Departure[] => {
      const movement = reading.movements.get(field);
      const got = told[index] ?? 0;
      if (movement === undefined) {
        const asked = reading.buttons.get(field) === true ? 1 : 0;
        return (got !== 0 ? 1 : 0) === asked
          ? []
          : [{ kind: "button", of: field, asked, got, isLong: false }];
      }
      const moved = negated ? -got : got;
      return moved === movement
        ? []
        : [{ kind: "movement", of: field, asked: movement, got: moved, isLong: false }];
    });
  });
}

/** Reports in which every free bit is seen both ways beside every other, flags of too long movements left out. */
function reports({ layout }: NotedFunction): readonly (readonly number[])[] {
  const cells = bitTables[layout].rows.map((row) => row.split(/\s+/));
  return Array.from({ length: 1000 }, (_, number) => {
    let bits = scrambled(number);
    return cells.map((row) =>
      row.reduce((byte, cell) => {
        if (cell === "xo" || cell === "yo") return byte * 2;
        if (cell === "0" || cell === "1") return byte * 2 + Number(cell);
        bits = scrambled(bits);
        return byte * 2 + (bits >>> 31);
      }, 0),
    );
  });
}

/** A step of a linear congruential generator modulo 2^32 (multiplier and increment: Numerical Recipes, 7.1). */
function scrambled(value: number): number {
  return (Math.imul(value, 1664525) + 1013904223) >>> 0;
}
