import type { Confidence, Source } from "../sources.ts";

/** What a register's bit does when it is 1, by its name; `$1` is what the first group holds. */
const MEANINGS: readonly (readonly [name: RegExp, meaning: string])[] = [
  [/^RXC\d?$/, "a byte has come in and was not read yet"],
  [/^TXC\d?$/, "the last byte has left"],
  [/^UDRE\d?$/, "the data register can take the next byte"],
  [/^FE\d?$/, "framing error: the stop bit was low"],
  [/^DOR\d?$/, "overrun: a byte was lost"],
  [/^UPE\d?$/, "parity error"],
  [/^U2X\d?$/, "double speed: 8 samples per bit instead of 16"],
  [/^RXCIE\d?$/, "interrupt when a byte has come in"],
  [/^TXCIE\d?$/, "interrupt when the last byte has left"],
  [/^UDRIE\d?$/, "interrupt while the data register is empty"],
  [/^RXEN\d?$/, "receiver on"],
  [/^TXEN\d?$/, "transmitter on"],
  [/^UCSZ\d?[012]$/, "part of the number of data bits"],
  [/^RXB8\d?$/, "ninth data bit that came in"],
  [/^TXB8\d?$/, "ninth data bit to send"],
  [/^UMSEL\d?\d?$/, "mode other than asynchronous"],
  [/^UPM\d?[01]$/, "part of the parity setting"],
  [/^USBS\d?$/, "two stop bits"],
  [/^INT(\d)$/, "interrupt on pin INT$1"],
  [/^INTF(\d)$/, "flag of INT$1; writing 1 clears it"],
  [/^ISC(\d)[01]$/, "edge of INT$1: 00 low level, 01 any change, 10 falling, 11 rising"],
  [/^PCIE(\d)$/, "pin-change interrupt of group $1"],
  [/^PCIE$/, "pin-change interrupt"],
  [/^PCIF(\d)$/, "flag of pin-change group $1; writing 1 clears it"],
  [/^PCIF$/, "flag of the pin-change interrupt; writing 1 clears it"],
  [/^PCINT(\d+)$/, "a change of pin PCINT$1 interrupts"],
  [/^OCIE(\d[ABC])$/, "interrupt at compare match $1"],
  [/^TOIE(\d)$/, "interrupt when timer $1 overflows"],
  [/^ICIE(\d)$/, "interrupt at an input capture of timer $1"],
  [/^OCF(\d[ABC])$/, "flag of compare match $1; writing 1 clears it"],
  [/^TOV(\d)$/, "timer $1 overflowed; writing 1 clears it"],
  [/^ICF(\d)$/, "input capture of timer $1; writing 1 clears it"],
  [/^CS(\d)[0-3]$/, "part of the clock of timer $1"],
  [/^WGM(\d)[0-3]$/, "part of the mode of timer $1"],
  [/^COM(\d[ABC])[01]$/, "part of what compare match $1 does to pin OC$1"],
  [/^SREG_I$/, "interrupts allowed"],
  [/^PORT([A-L]\d)$/, "P$1 high as an output, pulled up as an input"],
  [/^DD([A-L]\d)$/, "P$1 is an output"],
  [/^PIN([A-L]\d)$/, "P$1 reads high"],
];

export const bitMeaningSource: Source = { document: "atmega328Family", place: "register descriptions" };
export const bitMeaningConfidence: Confidence = "memory";

/** A few words for what the bit of this name does when it is 1; undefined for bits without an entry. */
export function bitMeaning(name: string): string | undefined {
  for (const [pattern, meaning] of MEANINGS) {
    if (pattern.test(name)) return name.replace(pattern, meaning);
  }
  return undefined;
}
