import { avrClassic } from "./divisors/avr-classic.ts";
import { avrFractional } from "./divisors/avr-fractional.ts";
import type {
  BaudGenerator,
  NearestBaud,
  RegisterValue,
  Sampling,
  Setting,
} from "./divisors/baud-generator.ts";
import { ch32v003 } from "./divisors/ch32v003.ts";
import { esp32, esp32Predivider, esp8266 } from "./divisors/esp.ts";
import { mcs51Timer1 } from "./divisors/mcs51-timer1.ts";
import { pic, picEightBit } from "./divisors/pic.ts";
import { rp2040 } from "./divisors/rp2040.ts";
import { samd21Arithmetic } from "./divisors/samd21-arithmetic.ts";
import { samd21Fractional } from "./divisors/samd21-fractional.ts";
import { avrTimer0Compare } from "./divisors/software-bits.ts";
import { stm32f0 } from "./divisors/stm32f0.ts";
import { stm32f1 } from "./divisors/stm32f1.ts";
import { stm32f4 } from "./divisors/stm32f4.ts";

export type { BaudGenerator, NearestBaud, RegisterValue, Sampling, Setting };

const baudGenerators: readonly BaudGenerator[] = [
  avrClassic,
  avrTimer0Compare,
  avrFractional,
  samd21Arithmetic,
  samd21Fractional,
  stm32f1,
  stm32f4,
  stm32f0,
  rp2040,
  pic,
  picEightBit,
  mcs51Timer1,
  esp8266,
  esp32,
  esp32Predivider,
  ch32v003,
];

/** The generator of this id, as `Chip.baudGenerators` names it. */
export function baudGeneratorNamed(id: string): BaudGenerator | undefined {
  return baudGenerators.find((each) => each.id === id);
}
