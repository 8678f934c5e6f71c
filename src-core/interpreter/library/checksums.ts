import type { OutsideBody } from "../outcome.ts";
import { numberAt, type Subject } from "./values.ts";

/** One byte into a checksum whose bits leave at the low end; `polynomial` is the reflected one. */
function lowFirst(polynomial: number): OutsideBody {
  return (parameters) => {
    let crc = numberAt(parameters, 0) ^ numberAt(parameters, 1);
    for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ polynomial : crc >>> 1;
    return crc;
  };
}

/** One byte into a checksum of this many bits whose bits leave at the high end. */
function highFirst(polynomial: number, bits: 8 | 16): OutsideBody {
  const top = 1 << (bits - 1);
  return (parameters) => {
    let crc = numberAt(parameters, 0) ^ (numberAt(parameters, 1) << (bits - 8));
    for (let bit = 0; bit < 8; bit += 1)
      crc = (crc & top ? (crc << 1) ^ polynomial : crc << 1) & (2 * top - 1);
    return crc;
  };
}

/** avr-libc's util/crc16.h and util/parity.h: polynomials as its manual gives them. */
export const checksumFunctions: Subject = {
  _crc16_update: lowFirst(0xa001),
  _crc_ccitt_update: lowFirst(0x8408),
  _crc_ibutton_update: lowFirst(0x8c),
  _crc_xmodem_update: highFirst(0x1021, 16),
  _crc8_ccitt_update: highFirst(0x07, 8),
  parity_even_bit(parameters) {
    let value = numberAt(parameters, 0) & 0xff;
    let ones = 0;
    for (; value !== 0; value >>>= 1) ones += value & 1;
    return ones & 1;
  },
};
