/** The first byte of a two-button report with and without the bit that marks it. */
export const rightMark = "0x40 | ";
export const wrongMark = "";

/**
 * A firmware that is an encoder and nothing else. Bit 6 of the first byte is always set: mouse(4) of the Linux
 * man-pages, "table of the three-byte packet". `before` stands in front of the statement that makes that byte.
 */
export function encoderFirmware(mark: string, before = ""): string {
  return `${head}${encoder("encode", mark, before)}`;
}

const noteOfEncoder = "// @wire encodes two-button from x=dx y=dy left=left right=right into out";

/** One without its note, and with x reaching bit 6 of the second byte. */
export function unnotedFirmware(): string {
  return encoderFirmware(rightMark).replace(`${noteOfEncoder}\n`, "").replace("dx & 0x3F", "dx & 0x7F");
}

/** One that takes many seconds to try: encoders that wait, and at last one with this mark. */
export function slowFirmware(mark: string): string {
  const waits = "for (volatile uint16_t i = 0; i < 15000; i++) { }";
  const waiting = Array.from({ length: 60 }, (_, index) => encoder(`wait_${index}`, rightMark, waits));
  return `${head}${waiting.join("")}${encoder("encode", mark, "")}`;
}

/** The first encoder's fault is allowed, the second's is not. */
export function halfAllowedFirmware(): string {
  const note = '// @wire allow report/sync-bit because "the sending function adds the mark"';
  return `${head}${encoder("allowed", wrongMark, `${note}\n    `)}${encoder("encode", wrongMark, "")}`;
}

const head = `// @wire board atmega328p clock=16MHz
#include <stdint.h>
#include <stdlib.h>
`;

function encoder(name: string, mark: string, before: string): string {
  return `
${noteOfEncoder}
void ${name}(uint8_t *out, int8_t dx, int8_t dy, uint8_t left, uint8_t right)
{
    ${before}out[0] = ${mark}(left ? 0x20 : 0) | (right ? 0x10 : 0) | ((dy & 0xC0) >> 4) | ((dx & 0xC0) >> 6);
    out[1] = dx & 0x3F;
    out[2] = dy & 0x3F;
}
`;
}
