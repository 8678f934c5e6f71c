import type { Pin, Register, Usart, UsartBits, Vector } from "./chip.ts";
import { bitPlace, registerNamed } from "./find-bits.ts";

/** Suffixes of USART registers; chips with a single USART may leave the number out. */
const SUFFIXES = ["", "0", "1", "2", "3"] as const;

/** The USARTs that the register table has, in the order of their numbers. */
export function usartsOf(
  registers: readonly Register[],
  pins: readonly Pin[],
  vectors: readonly Vector[],
): readonly Usart[] {
  return SUFFIXES.flatMap((suffix) => {
    const found = usart(suffix, registers, pins, vectors);
    return found === undefined ? [] : [found];
  });
}

function usart(
  suffix: string,
  registers: readonly Register[],
  pins: readonly Pin[],
  vectors: readonly Vector[],
): Usart | undefined {
  const register = (name: string): Register | undefined => registerNamed(registers, name);
  const data = register(`UDR${suffix}`);
  const a = register(`UCSR${suffix}A`);
  const b = register(`UCSR${suffix}B`);
  const c = register(`UCSR${suffix}C`);
  const divisorLow = register(`UBRR${suffix}L`);
  const divisorHigh = register(`UBRR${suffix}H`);
  const bits = usartBits(suffix, registers);
  const txPin = pins.find(({ functions }) => functions.includes(`TXD${suffix}`))?.name;
  const rxPin = pins.find(({ functions }) => functions.includes(`RXD${suffix}`))?.name;
  const vector = (event: string): string | undefined =>
    [`USART${suffix}_${event}_vect`, `USART_${event}_vect`, `USART_${event}C_vect`].find((name) =>
      vectors.some(({ names }) => names.includes(name)),
    );
  const receive = vector("RX");
  const empty = vector("UDRE");
  const sent = vector("TX");
  if (data === undefined || a === undefined || b === undefined || c === undefined) return undefined;
  if (divisorLow === undefined || divisorHigh === undefined || bits === undefined) return undefined;
  if (txPin === undefined || rxPin === undefined) return undefined;
  if (receive === undefined || empty === undefined || sent === undefined) return undefined;
  return {
    number: Number(suffix),
    data,
    control: [a, b, c],
    divisor: register(`UBRR${suffix}`),
    divisorLow,
    divisorHigh,
    bits,
    txPin,
    rxPin,
    vectors: { receive, empty, sent },
  };
}

function usartBits(suffix: string, registers: readonly Register[]): UsartBits | undefined {
  const bit = (name: string) => bitPlace(registers, name);
  const doubleSpeed = bit(`U2X${suffix}`);
  const transmitEnable = bit(`TXEN${suffix}`);
  const receiveEnable = bit(`RXEN${suffix}`);
  const size2 = bit(`UCSZ${suffix}2`);
  const size1 = bit(`UCSZ${suffix}1`);
  const size0 = bit(`UCSZ${suffix}0`);
  const stop = bit(`USBS${suffix}`);
  const parity1 = bit(`UPM${suffix}1`);
  const parity0 = bit(`UPM${suffix}0`);
  if (doubleSpeed === undefined || transmitEnable === undefined || receiveEnable === undefined)
    return undefined;
  if (size2 === undefined || size1 === undefined || size0 === undefined || stop === undefined)
    return undefined;
  if (parity1 === undefined || parity0 === undefined) return undefined;
  const select = bit(`URSEL${suffix}`);
  const modes = [`UMSEL${suffix}1`, `UMSEL${suffix}0`, `UMSEL${suffix}`].map(bit);
  return {
    doubleSpeed,
    transmitEnable,
    receiveEnable,
    size: [size2, size1, size0],
    stop,
    parity: [parity1, parity0],
    mode: modes.filter((each) => each !== undefined),
    select: select && { ...select, name: `URSEL${suffix}` },
  };
}
