import { describe, expect, test } from "vitest";
import { baudGeneratorNamed } from "../../../../src-core/model/baud-generators.ts";
import type { AvrChip, BitPlace } from "../../../../src-core/model/chips/chip.ts";
import {
  avrChipNamed,
  boardPin,
  chip,
  chipNames,
  pinByPort,
  portConstants,
  registerAt,
  registerBitNamed,
  registerNamed,
  sketchInterruptPin,
  vectorNamed,
} from "../../../../src-core/model/chips.ts";

function avr(name: string): AvrChip {
  return avrChipNamed(name) ?? expect.fail(`no AVR chip ${name}`);
}

function place(at: BitPlace | undefined): string {
  return at === undefined ? "none" : `${at.register}.${at.bit}`;
}

describe("chip names", () => {
  test("capitals do not matter, and the same chip is the same object", () => {
    expect(chip("ATmega328P")?.name).toBe("atmega328p");
    expect(chip("atmega328p")).toBe(chip("ATMEGA328P"));
  });

  test("an unknown chip is none", () => {
    expect(chip("atmega328q")).toBeUndefined();
  });

  test("names are lower case and unique, and every one is found", () => {
    expect(new Set(chipNames).size).toBe(chipNames.length);
    for (const name of chipNames) expect(chip(name)?.name).toBe(name);
  });

  test("every chip names baud generators that there are, for its family", () => {
    for (const name of chipNames) {
      const found = chip(name);
      expect(found?.baudGenerators.length).toBeGreaterThan(0);
      for (const id of found?.baudGenerators ?? []) {
        expect(baudGeneratorNamed(id)?.families).toContain(found?.family);
      }
    }
  });

  test.each([
    ["atsamd21g18", "samd21", "ilp32"],
    ["stm32f103c8", "stm32f1", "ilp32"],
    ["rp2040", "rp2040", "ilp32"],
    ["atmega4809", "avr-dx", "avr"],
    ["pic18f4550", "pic", "unknown"],
    ["at89s52", "mcs51", "unknown"],
    ["esp32-c3", "esp32", "ilp32"],
    ["ch32v003", "ch32v003", "ilp32"],
  ])("%s is known by name", (name, family, dataModel) => {
    expect(chip(name)).toMatchObject({ kind: "named", family, dataModel, uarts: undefined });
  });
});

/** Pin tables of the AVR sketch core 1.8.7 (variants standard, leonardo, mega, gemma). */
describe("board pins", () => {
  test.each([
    ["atmega328p", "2", "PD2"],
    ["atmega328p", "D13", "PB5"],
    ["atmega328p", "A3", "PC3"],
    ["atmega328p", "17", "PC3"],
    ["atmega328p", "PD2", "PD2"],
    ["atmega328p", "pd2", "PD2"],
    ["atmega32u4", "0", "PD2"],
    ["atmega32u4", "1", "PD3"],
    ["atmega32u4", "2", "PD1"],
    ["atmega32u4", "7", "PE6"],
    ["atmega32u4", "A0", "PF7"],
    ["atmega2560", "2", "PE4"],
    ["atmega2560", "19", "PD2"],
    ["atmega2560", "A15", "PK7"],
    ["attiny85", "2", "PB2"],
    ["attiny25", "PB4", "PB4"],
    ["attiny2313", "PD2", "PD2"],
  ])("%s: %s is %s", (name, pin, port) => {
    expect(boardPin(avr(name), pin)?.name).toBe(port);
  });

  test.each([
    ["atmega328p", "20"],
    ["atmega328p", "A6"],
    ["atmega328p", "PD8"],
    ["atmega328p", "PA0"],
    ["attiny85", "6"],
    ["attiny2313", "2"],
    ["atmega328p", ""],
  ])("%s has no %s", (name, pin) => {
    expect(boardPin(avr(name), pin)).toBeUndefined();
  });

  test("A6 and A7 of ATmega328P are analogue inputs only", () => {
    expect(avr("atmega328p").analogOnly).toEqual({ A6: "ADC6", A7: "ADC7" });
  });

  test("a chip known by name has no pins", () => {
    const named = chip("rp2040");
    expect(named && boardPin(named, "2")).toBeUndefined();
  });
});

/** Interrupts from the chips' datasheets (pin descriptions); register bits as avr-libc names them. */
describe("interrupts of pins", () => {
  test.each([
    ["atmega328p", "PD2", "INT0_vect", "EIMSK.0", "EIFR.0", "EICRA.1", "EICRA.0"],
    ["atmega328p", "PD3", "INT1_vect", "EIMSK.1", "EIFR.1", "EICRA.3", "EICRA.2"],
    ["atmega2560", "PE4", "INT4_vect", "EIMSK.4", "EIFR.4", "EICRB.1", "EICRB.0"],
    ["atmega32u4", "PE6", "INT6_vect", "EIMSK.6", "EIFR.6", "EICRB.5", "EICRB.4"],
    ["attiny85", "PB2", "INT0_vect", "GIMSK.6", "GIFR.6", "MCUCR.1", "MCUCR.0"],
    ["attiny2313", "PD3", "INT1_vect", "GIMSK.7", "EIFR.7", "MCUCR.3", "MCUCR.2"],
    ["atmega8", "PD2", "INT0_vect", "GICR.6", "GIFR.6", "MCUCR.1", "MCUCR.0"],
    ["atmega32", "PD3", "INT1_vect", "GICR.7", "GIFR.7", "MCUCR.3", "MCUCR.2"],
    ["attiny84", "PB2", "INT0_vect", "GIMSK.6", "GIFR.6", "MCUCR.1", "MCUCR.0"],
    ["atmega1284p", "PB2", "INT2_vect", "EIMSK.2", "EIFR.2", "EICRA.5", "EICRA.4"],
  ])("%s %s: %s", (name, pin, vector, enable, flag, high, low) => {
    const found = boardPin(avr(name), pin)?.externalInterrupt;
    expect(found?.vector).toBe(vector);
    expect([place(found?.enable), place(found?.flag)]).toEqual([enable, flag]);
    expect(found?.sense?.map(place)).toEqual([high, low]);
  });

  test.each([
    ["atmega328p", "PD4", "PCINT20", "PCINT2_vect", "PCMSK2.4", "PCICR.2", "PCIFR.2"],
    ["atmega328p", "PC0", "PCINT8", "PCINT1_vect", "PCMSK1.0", "PCICR.1", "PCIFR.1"],
    ["atmega2560", "PK0", "PCINT16", "PCINT2_vect", "PCMSK2.0", "PCICR.2", "PCIFR.2"],
    ["atmega2560", "PE0", "PCINT8", "PCINT1_vect", "PCMSK1.0", "PCICR.1", "PCIFR.1"],
    ["attiny85", "PB3", "PCINT3", "PCINT0_vect", "PCMSK.3", "GIMSK.5", "GIFR.5"],
    ["attiny2313", "PB0", "PCINT0", "PCINT_vect", "PCMSK.0", "GIMSK.5", "EIFR.5"],
    ["attiny2313a", "PB0", "PCINT0", "PCINT0_vect", "PCMSK.0", "GIMSK.5", "EIFR.5"],
    ["attiny4313", "PD6", "PCINT17", "PCINT2_vect", "PCMSK2.6", "GIMSK.4", "EIFR.4"],
    ["attiny84", "PA3", "PCINT3", "PCINT0_vect", "PCMSK0.3", "GIMSK.4", "GIFR.4"],
    ["atmega644p", "PD0", "PCINT24", "PCINT3_vect", "PCMSK3.0", "PCICR.3", "PCIFR.3"],
  ])("%s %s: %s", (name, pin, change, vector, mask, enable, flag) => {
    const found = boardPin(avr(name), pin)?.pinChange;
    expect([found?.name, found?.vector]).toEqual([change, vector]);
    expect([place(found?.mask), place(found?.enable), place(found?.flag)]).toEqual([mask, enable, flag]);
  });

  test("pins that can interrupt in no way: ATmega32U4 PC7 (D13), ATmega2560 PA0 (D22)", () => {
    for (const pin of [boardPin(avr("atmega32u4"), "13"), boardPin(avr("atmega2560"), "22")]) {
      expect(pin).toBeDefined();
      expect(pin?.externalInterrupt ?? pin?.pinChange).toBeUndefined();
    }
  });

  test("numbers of the sketch core's attachInterrupt: on ATmega2560 0 is INT4", () => {
    const mega = [0, 1, 2, 3, 4, 5, 6].map(
      (number) => sketchInterruptPin(avr("atmega2560"), number)?.externalInterrupt?.name,
    );
    expect(mega).toEqual(["INT4", "INT5", "INT0", "INT1", "INT2", "INT3", undefined]);
    const leonardo = [0, 1, 2, 3, 4].map(
      (number) => sketchInterruptPin(avr("atmega32u4"), number)?.boardNames[0],
    );
    expect(leonardo).toEqual(["D3", "D2", "D0", "D1", "D7"]);
  });
});

describe("registers", () => {
  test("a 16-bit register shares its address with its low byte", () => {
    const mega = avr("atmega328p");
    expect(registerAt(mega, 0xc4)?.name).toBe("UBRR0L");
    expect(registerAt(mega, 0xc4, 16)?.name).toBe("UBRR0");
    expect(registerAt(mega, 0x84, 16)?.name).toBe("TCNT1");
    expect(registerAt(mega, 0xff)).toBeUndefined();
  });

  test("registers below 60 have an IN/OUT address 20 lower", () => {
    expect(registerNamed(avr("atmega328p"), "PORTD")).toMatchObject({ address: 0x2b, ioAddress: 0x0b });
    expect(registerNamed(avr("atmega328p"), "UCSR0A")).toMatchObject({ address: 0xc0, ioAddress: undefined });
  });

  test("bits, vectors and the spellings of pin numbers", () => {
    expect(registerBitNamed(avr("atmega328p"), "U2X0")).toMatchObject({
      bit: 1,
      register: { name: "UCSR0A" },
    });
    expect(vectorNamed(avr("atmega328p"), "USART_RX_vect")).toMatchObject({ number: 18, byteAddress: 72 });
    expect(vectorNamed(avr("attiny85"), "TIM0_OVF_vect")).toMatchObject({ number: 5, byteAddress: 10 });
    const constants = portConstants(avr("atmega328p"));
    expect(["PD2", "PORTB5", "DDB0", "PINC6"].map((name) => constants.get(name))).toEqual([2, 5, 0, 6]);
    expect(constants.has("PC7")).toBe(false);
    expect(portConstants(avr("attiny2313")).get("DDRA1")).toBe(1);
  });

  test("pins by port", () => {
    expect(pinByPort(avr("atmega2560"), "H", 3)?.boardNames).toEqual(["D6"]);
    expect(pinByPort(avr("atmega2560"), "I", 0)).toBeUndefined();
  });
});

describe("USARTs", () => {
  test.each([
    ["atmega328p", 0, "UCSR0A UCSR0B UCSR0C UBRR0L UBRR0H UDR0", "PD1", "PD0"],
    ["atmega32u4", 1, "UCSR1A UCSR1B UCSR1C UBRR1L UBRR1H UDR1", "PD3", "PD2"],
    ["atmega2560", 3, "UCSR3A UCSR3B UCSR3C UBRR3L UBRR3H UDR3", "PJ1", "PJ0"],
    ["attiny2313", 0, "UCSRA UCSRB UCSRC UBRRL UBRRH UDR", "PD1", "PD0"],
    ["attiny4313", 0, "UCSRA UCSRB UCSRC UBRRL UBRRH UDR", "PD1", "PD0"],
    ["atmega8", 0, "UCSRA UCSRB UCSRC UBRRL UBRRH UDR", "PD1", "PD0"],
    ["atmega16", 0, "UCSRA UCSRB UCSRC UBRRL UBRRH UDR", "PD1", "PD0"],
    ["atmega88", 0, "UCSR0A UCSR0B UCSR0C UBRR0L UBRR0H UDR0", "PD1", "PD0"],
    ["atmega1284p", 1, "UCSR1A UCSR1B UCSR1C UBRR1L UBRR1H UDR1", "PD3", "PD2"],
  ])("%s USART %s", (name, number, registers, tx, rx) => {
    const usart = avr(name).usarts.find((each) => each.number === number);
    const { control = [], divisorLow, divisorHigh, data } = usart ?? {};
    const names = [...control, divisorLow, divisorHigh, data].map((each) => each?.name);
    expect(names.join(" ")).toBe(registers);
    expect([usart?.txPin, usart?.rxPin]).toEqual([tx, rx]);
  });

  test.each([
    ["atmega328p", [0]],
    ["atmega32u4", [1]],
    ["atmega2560", [0, 1, 2, 3]],
    ["attiny85", []],
    ["attiny2313", [0]],
  ])("%s has USARTs %o", (name, numbers) => {
    expect(avr(name).uarts).toEqual(numbers);
  });

  test("frame bits, ATmega48A/.../328P 8271, UCSRnB and UCSRnC", () => {
    const bits = avr("atmega328p").usarts[0]?.bits;
    expect(bits?.size.map(place)).toEqual(["UCSR0B.2", "UCSR0C.2", "UCSR0C.1"]);
    expect(bits?.parity.map(place)).toEqual(["UCSR0C.5", "UCSR0C.4"]);
    expect([place(bits?.stop), place(bits?.doubleSpeed)]).toEqual(["UCSR0C.3", "UCSR0A.1"]);
    expect(avr("attiny2313").usarts[0]?.bits.mode.map(place)).toEqual(["UCSRC.6"]);
  });
});

describe("timers", () => {
  test("ATmega328P: two of 8 bits, one of 16", () => {
    const timers = avr("atmega328p").timers.map(({ number, width }) => `${number}:${width}`);
    expect(timers).toEqual(["0:8", "1:16", "2:8"]);
  });

  test("clock select, avr8js 0.21.1: timer 0 and 1 divide by 1, 8, 64, 256, 1024, timer 2 by 1 to 1024 in seven steps", () => {
    const [timer0, timer1, timer2] = avr("atmega328p").timers;
    const expected = [undefined, 1, 8, 64, 256, 1024, undefined, undefined];
    expect(timer0?.prescalers).toEqual(expected);
    expect(timer1?.prescalers).toEqual(expected);
    expect(timer2?.prescalers).toEqual([undefined, 1, 8, 32, 64, 128, 256, 1024]);
  });

  test("ATtiny85 timer 1 (from memory of the datasheet): powers of two up to 16384", () => {
    expect(avr("attiny85").timers[1]?.prescalers.at(-1)).toBe(16_384);
  });
});
