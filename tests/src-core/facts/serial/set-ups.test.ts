import { describe, expect, test } from "vitest";
import { formatLineFormat } from "../../../../src-core/model/line-formats.ts";
import { factsOf } from "../../checks/harness.ts";

const setUpsOf = (chip: string, statements: string) =>
  factsOf({
    "main.c": `// @wire board ${chip} clock=16MHz
#include <avr/io.h>
int main(void) {
${statements}
  for (;;) {
  }
}
`,
  }).serial.setUps;

const only = (chip: string, statements: string) => {
  const [first, ...others] = setUpsOf(chip, statements);
  expect(others).toEqual([]);
  if (first === undefined) throw new Error("no set-up was found");
  return first;
};

const rateOf = (statements: string, chip = "atmega328p") => only(chip, statements).rate;

describe("the frame that UCSRnB and UCSRnC choose", () => {
  // UCSRC values of the formats: HardwareSerial.h of Debian package arduino-core-avr 1.8.7 (SERIAL_5N1 and so on).
  test.each([
    [0x00, "5N1"],
    [0x02, "6N1"],
    [0x04, "7N1"],
    [0x06, "8N1"],
    [0x08, "5N2"],
    [0x0a, "6N2"],
    [0x0c, "7N2"],
    [0x0e, "8N2"],
    [0x20, "5E1"],
    [0x22, "6E1"],
    [0x24, "7E1"],
    [0x26, "8E1"],
    [0x2c, "7E2"],
    [0x34, "7O1"],
    [0x36, "8O1"],
    [0x3e, "8O2"],
  ])("UCSR0C = %i is %s", (value, format) => {
    const found = only("atmega328p", `  UBRR0 = 832;\n  UCSR0C = ${value};`).format.format;
    expect(found && formatLineFormat(found)).toBe(format);
  });

  // UCSZn2 is bit 2 of UCSRnB: 9 data bits with all three. ATmega328P datasheet, USART Register Description.
  test("nine data bits take a bit of UCSRnB as well", () => {
    const { format } = only("atmega328p", "  UBRR0 = 832;\n  UCSR0B = _BV(UCSZ02);\n  UCSR0C = 6;");
    expect(format.format?.dataBits).toBe(9);
  });

  // Reset value of UCSRnC: 0x06. ATmega328P datasheet, USART Register Description.
  test("8N1 while nothing is written, with no place to show", () => {
    const { format } = only("atmega328p", "  UBRR0 = 832;");
    expect(format.format).toEqual({ dataBits: 8, parity: "none", stopBits: 1 });
    expect(format.span).toBeUndefined();
  });

  test("bits set and cleared one after the other", () => {
    const { format } = only(
      "atmega328p",
      "  UBRR0 = 832;\n  UCSR0C |= _BV(USBS0);\n  UCSR0C &= ~_BV(UCSZ00);",
    );
    expect(format.format && formatLineFormat(format.format)).toBe("7N2");
  });

  test("a reserved code is not known", () => {
    expect(only("atmega328p", "  UBRR0 = 832;\n  UCSR0C = 0x16;").format.format).toBeUndefined();
  });

  test("a value from outside is not known", () => {
    expect(only("atmega328p", "  UBRR0 = 832;\n  UCSR0C = PINB;").format.format).toBeUndefined();
  });
});

describe("the divisor", () => {
  test("16 bits at once", () => {
    expect(rateOf("  UBRR0 = 832;")).toMatchObject({ held: 832, intended: 832, samples: 16 });
  });

  test("two bytes in either order", () => {
    const high = "  UBRR0H = 832 >> 8;\n";
    const low = "  UBRR0L = 832 & 0xFF;\n";
    expect(rateOf(high + low)).toMatchObject({ held: 832, intended: 832, written: "bytes" });
    expect(rateOf(low + high)).toMatchObject({ held: 832, intended: 832, written: "bytes" });
  });

  test("registers of other numbers, and of chips that leave the number out", () => {
    expect(rateOf("  UBRR3 = 207;", "atmega2560")).toMatchObject({ held: 207 });
    expect(rateOf("  UBRRH = 0;\n  UBRRL = 51;", "attiny2313")).toMatchObject({ held: 51 });
  });

  // 832 = 0x340: the low byte is 0x40.
  test("the low byte alone keeps what fits", () => {
    expect(rateOf("  UBRR0L = 832;")).toMatchObject({ held: 64, intended: 832, written: "low byte" });
  });

  // UBRR has 12 bits: 13332 = 0x3414, of which 0x414 = 1044 is left.
  test("the register keeps 12 bits", () => {
    expect(rateOf("  UBRR0 = 13332;")).toMatchObject({ held: 1044, intended: 13332 });
  });

  test("the speed bit may be written before or after", () => {
    expect(rateOf("  UCSR0A = _BV(U2X0);\n  UBRR0 = 1666;")).toMatchObject({ samples: 8 });
    expect(rateOf("  UBRR0 = 1666;\n  UCSR0A |= _BV(U2X0);")).toMatchObject({ samples: 8 });
    expect(rateOf("  UCSR0A |= _BV(U2X0);\n  UCSR0A &= ~_BV(U2X0);\n  UBRR0 = 832;")).toMatchObject({
      samples: 16,
    });
  });

  test("a speed bit that hangs on something unknown is not known", () => {
    const statements = "  UBRR0 = 832;\n  if (PINB & 1) UCSR0A |= _BV(U2X0);";
    expect(rateOf(statements)).toMatchObject({ held: 832, samples: undefined });
  });

  test("the rate that it was computed from", () => {
    const named = (expression: string) => rateOf(`  UBRR0 = ${expression};`);
    expect(rateOf("#define BAUD 2400\n  UBRR0 = 16000000UL / 16 / BAUD - 1;")).toMatchObject({ named: 2400 });
    expect(rateOf("  enum { baud_rate = 4800 };\n  UBRR0 = 1000000UL / baud_rate - 1;")).toMatchObject({
      named: 4800,
    });
    const macro =
      "#define BAUD_DIVISOR (F / (16UL * RATE_BAUD) - 1)\n#define F 16000000UL\n#define RATE_BAUD 9600\n";
    expect(rateOf(`${macro}  UBRR0 = BAUD_DIVISOR;`)).toMatchObject({ held: 103, named: 9600 });
    const call = "#define BAUDS(b) ((1000000UL + 8UL * (b)) / (16UL * (b)) - 1)\n";
    expect(rateOf(`${call}  UBRR0 = BAUDS(1200);`)).toMatchObject({ held: 51, named: undefined });
    expect(named("16000000UL / 16 / 1200 - 1")).toMatchObject({ named: undefined });
  });
});

describe("ports", () => {
  const sketch = (notes: string, setup: string, head = "") =>
    factsOf({ "ferry.ino": `${notes}\n${head}\nvoid setup() { ${setup} }\nvoid loop() {}\n` }).serial;

  test("the core's serial class with a format and without", () => {
    const { setUps } = sketch(
      "// @wire board atmega2560 clock=16MHz",
      "Serial.begin(9600); Serial2.begin(1200, SERIAL_7N2);",
    );
    expect(
      setUps.map(({ port, rate, format }) => [port, rate, format.format && formatLineFormat(format.format)]),
    ).toEqual([
      [{ kind: "uart", uart: 0 }, { kind: "baud", baud: 9600 }, "8N1"],
      [{ kind: "uart", uart: 2 }, { kind: "baud", baud: 1200 }, "7N2"],
    ]);
  });

  // ATmega32U4 has USART1 only; the core's Serial is its USB port: ATmega16U4/32U4 datasheet (7766), USART.
  test("the USB port of an ATmega32U4 is no UART", () => {
    const { setUps } = sketch(
      "// @wire board atmega32u4 clock=16MHz",
      "Serial.begin(9600); Serial1.begin(1200);",
    );
    expect(setUps.map(({ port }) => port)).toEqual([{ kind: "uart", uart: 1 }]);
  });

  test("software serial and its pins", () => {
    const { setUps } = sketch(
      "// @wire board atmega328p clock=16MHz",
      "pc.begin(1200);",
      "#include <SoftwareSerial.h>\nSoftwareSerial pc(10, 11);",
    );
    expect(setUps.map(({ port }) => port)).toEqual([
      { kind: "software", name: "pc", pins: [10, 11], inverse: false },
    ]);
  });

  test("the mouse's port is the one that a note names", () => {
    const both = "Serial.begin(9600); Serial1.begin(1200);";
    const board = "// @wire board atmega2560 clock=16MHz\n";
    expect(
      sketch(`${board}// @wire serial uart=1`, both).mouseSetUps.map(({ span }) => span.start),
    ).toHaveLength(1);
    expect(sketch(`${board}// @wire serial uart=1`, both).mouseSetUps[0]?.port).toEqual({
      kind: "uart",
      uart: 1,
    });
    expect(sketch(board, "Serial1.begin(1200);").mouseSetUps[0]?.port).toEqual({ kind: "uart", uart: 1 });
    expect(sketch(board, both).mouseSetUps).toEqual([]);
    expect(sketch(`${board}// @wire serial tx=8`, both).mouseSetUps).toEqual([]);
  });

  test("the top bit of what is sent", () => {
    const topBit = (body: string) =>
      factsOf({
        "main.c": `// @wire board atmega328p clock=16MHz
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  ${body}
  return 0;
}
`,
      }).serial.setUps[0]?.topBit;
    expect(topBit("")).toBe("no bytes seen");
    expect(topBit("UDR0 = 'M' | 0x80; UDR0 = PINB | 0x80;")).toBe("set");
    expect(topBit("UDR0 = 'M' | 0x80; UDR0 = PINB;")).toBe("not seen to be set");
    expect(topBit("UDR0 = 0x40;")).toBe("not seen to be set");
  });
});
