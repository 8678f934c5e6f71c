import { describe, expect, it } from "vitest";
import { bitMeaning } from "../../../../src-core/model/chips/bit-meanings.ts";

// ATmega48A/.../328P datasheet 8271, register descriptions, from memory of the text; the pin-change bits without a
// number are those of the ATtiny25/45/85 datasheet 2586.
const meanings: readonly (readonly [bit: string, part: string])[] = [
  ["UDRE0", "can take the next byte"],
  ["RXC", "has come in"],
  ["U2X1", "8 samples per bit"],
  ["USBS0", "two stop bits"],
  ["TXEN0", "transmitter"],
  ["FE0", "stop bit was low"],
  ["ISC01", "10 falling"],
  ["INT1", "pin INT1"],
  ["INTF0", "writing 1 clears"],
  ["PCIE2", "group 2"],
  ["PCIE", "pin-change interrupt"],
  ["PCINT18", "pin PCINT18"],
  ["OCIE1B", "compare match 1B"],
  ["TOV0", "timer 0 overflowed"],
  ["PORTD2", "PD2 high as an output, pulled up as an input"],
  ["DDB5", "PB5 is an output"],
  ["PINC0", "PC0 reads high"],
];

describe("what bits of registers do", () => {
  for (const [bit, part] of meanings) {
    it(bit, () => expect(bitMeaning(bit)).toContain(part));
  }
  it("says nothing of bits that it does not know", () => {
    for (const name of ["MPCM0", "OCR0A_7", "UBRR0_8", "", "ISC0", "XPORTD2"])
      expect(bitMeaning(name)).toBeUndefined();
  });
});
