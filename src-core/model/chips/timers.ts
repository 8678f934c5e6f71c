import type { Register, Timer } from "./chip.ts";
import { registerNamed } from "./find-bits.ts";

/** Clock select 1 to 5; 6 and 7 count edges of an external pin. avr8js 0.21.1, timers 0 and 1. */
const SYNCHRONOUS = [undefined, 1, 8, 64, 256, 1024, undefined, undefined] as const;

/** Timer 2, which can run from a watch crystal, has finer steps. avr8js 0.21.1, timer 2. */
const ASYNCHRONOUS = [undefined, 1, 8, 32, 64, 128, 256, 1024] as const;

/** Powers of two from 1 to 16384: timer 1 of ATtiny25/45/85, timer 4 of ATmega32U4. From memory of the datasheets. */
const POWERS: readonly (number | undefined)[] = [undefined, ...Array.from({ length: 15 }, (_, n) => 2 ** n)];

const COMPARE_LETTERS = ["A", "B", "C", "D"] as const;

/** The timers that the register table has, in the order of their numbers. */
export function timersOf(registers: readonly Register[]): readonly Timer[] {
  return [0, 1, 2, 3, 4, 5].flatMap((number) => {
    const counter = registerNamed(registers, `TCNT${number}`);
    if (counter === undefined) return [];
    const single = registerNamed(registers, `TCCR${number}`);
    const control =
      single === undefined ? named(registers, ["A", "B", "C", "D", "E"], `TCCR${number}`) : [single];
    const highBits = registerNamed(registers, `TC${number}H`);
    return [
      {
        number,
        width: highBits === undefined ? counter.width : 10,
        counter,
        control,
        compare: named(registers, COMPARE_LETTERS, `OCR${number}`),
        prescalers: prescalers(number, single !== undefined || highBits !== undefined),
      },
    ];
  });
}

function named(
  registers: readonly Register[],
  letters: readonly string[],
  stem: string,
): readonly Register[] {
  return letters
    .map((letter) => registerNamed(registers, `${stem}${letter}`))
    .filter((each) => each !== undefined);
}

function prescalers(number: number, isHighSpeed: boolean): readonly (number | undefined)[] {
  if (isHighSpeed) return POWERS;
  return number === 2 ? ASYNCHRONOUS : SYNCHRONOUS;
}
