import { describe, expect, test } from "vitest";
import { runSketch } from "./sketch-on-bench.ts";

const text = (bytes: readonly { readonly byte: number }[]): string =>
  String.fromCharCode(...bytes.map(({ byte }) => byte));

/** Names of files are those of arduino-core-avr, folder `cores/arduino`. */
describe("Serial on the line", () => {
  test("bytes, texts, numbers and line ends (Print.cpp)", () => {
    const { bytes, end } = runSketch(
      `
      void setup() { Serial.begin(9600); Serial.write('M'); Serial.print("ab"); Serial.print(-12); Serial.println(255, HEX);
        Serial.print(F("flash")); Serial.println(); const uint8_t more[] = {1, 2}; Serial.write(more, 2); }
      void loop() {}
    `,
    );
    expect(end).toEqual({ kind: "ended" });
    expect(text(bytes(9600))).toBe("Mab-12FF\r\nflash\r\n\x01\x02");
  });

  test.each([
    [1200, "SERIAL_7N1", [0x02, 1666 >> 8, 1666 & 0xff, 0x04]],
    [9600, undefined, [0x02, 0, 207, 0x06]],
    [57_600, undefined, [0x00, 0, 16, 0x06]],
    [300, "SERIAL_8E2", [0x00, 3332 >> 8, 3332 & 0xff, 0x2e]],
  ])("HardwareSerial.cpp, begin(%d, %s) at 16 MHz: U2X, divisor, frame", (baud, format, expected) => {
    const more = format === undefined ? "" : `, ${format}`;
    const { bytes } = runSketch(`
      void setup() { Serial.begin(${baud}${more}); uint8_t s[] = { (uint8_t)(UCSR0A & 2), UBRR0H, UBRR0L, UCSR0C, UCSR0B };
        Serial.begin(9600); Serial.write(s, 5); }
      void loop() {}
    `);
    // 16,000,000 / 8 / baud - 1 with U2X unless that is above 4095 or baud is 57,600; UCSR0B: RXCIE, RXEN, TXEN.
    expect(bytes(9600).map(({ byte }) => byte)).toEqual([...expected, 0x98]);
  });

  test("64 bytes of buffer: 63 and two in the USART go without waiting, the next blocks for a byte's time", () => {
    const { bytes, edges } = runSketch(
      `
      unsigned long times[70];
      void setup() {
        Serial.begin(1200);
        for (uint8_t i = 0; i < 70; i++) { Serial.write(i); times[i] = micros(); }
        Serial.flush();
        pinMode(2, OUTPUT);
        Serial.begin(38400);
        for (uint8_t i = 1; i < 70; i++) { uint16_t t = (times[i] - times[i - 1]) / 64; Serial.write(t > 255 ? 255 : t); }
      }
      void loop() {}
    `,
      { milliseconds: 700 },
    );
    const switched = edges("clock").at(-1)?.time ?? 0;
    const sent = bytes(1200, 0, switched);
    expect(sent.map(({ byte }) => byte)).toEqual(Array.from({ length: 70 }, (_, index) => index));
    // Ten bits at 1200 baud, one after the other.
    for (const [index, { time }] of sent.slice(1).entries())
      expect(Math.abs(time - (sent[index]?.time ?? 0) - 8333)).toBeLessThan(10);
    const gaps = bytes(38_400, switched).map(({ byte }) => byte);
    expect(gaps).toHaveLength(69);
    // Two go to data and shift register, 63 into the buffer (SERIAL_TX_BUFFER_SIZE less one); then 8.3 ms each.
    expect(gaps.slice(0, 64).every((gap) => gap < 3)).toBe(true);
    expect(gaps.slice(65).every((gap) => gap > 120 && gap < 140)).toBe(true);
  });

  test("availableForWrite counts what the handler of the empty data register has taken", () => {
    const { bytes } = runSketch(
      `
      void setup() {
        Serial.begin(9600);
        uint8_t seen[4];
        seen[0] = Serial.availableForWrite();
        for (uint8_t i = 0; i < 12; i++) Serial.write(i);
        seen[1] = Serial.availableForWrite();
        delay(6);
        seen[2] = Serial.availableForWrite();
        Serial.flush();
        seen[3] = Serial.availableForWrite();
        Serial.write(seen, 4);
      }
      void loop() {}
    `,
    );
    // 1.04 ms a byte: 2 of 12 go at once, and five or six more start within 6 ms.
    const seen = bytes(9600)
      .slice(12)
      .map(({ byte }) => byte);
    expect([seen[0], seen[1], seen[3]]).toEqual([63, 53, 63]);
    expect([58, 59]).toContain(seen[2]);
  });

  test("with interrupts off a full buffer is emptied by write itself (HardwareSerial.cpp)", () => {
    const { bytes, end } = runSketch(
      `
      void setup() { Serial.begin(38400); noInterrupts(); for (uint8_t i = 0; i < 100; i++) Serial.write(i); interrupts(); }
      void loop() {}
    `,
    );
    expect(end).toEqual({ kind: "ended" });
    expect(bytes(38_400).map(({ byte }) => byte)).toEqual(Array.from({ length: 100 }, (_, index) => index));
  });

  test("flush waits for the last stop bit, end lets go of the pin", () => {
    const { bytes, edges } = runSketch(
      `
      void setup() { pinMode(2, OUTPUT); Serial.begin(9600); Serial.write(0x55); Serial.flush(); digitalWrite(2, HIGH); delay(1); digitalWrite(2, LOW);
        Serial.end(); digitalWrite(1, LOW); pinMode(1, OUTPUT); }
      void loop() {}
    `,
    );
    const rise = edges("clock").findLast(({ level }) => level === 1)?.time ?? 0;
    const [sent] = bytes(9600, 0, rise);
    // Ten bits of 104.17 us.
    expect(rise - (sent?.time ?? 0)).toBeGreaterThan(1035);
    expect(rise - (sent?.time ?? 0)).toBeLessThan(1070);
    expect(edges("rxd").at(-1)).toMatchObject({ level: 0, text: "pinMode(1, OUTPUT)" });
  });

  test.each([
    [{}, 63],
    [{ SERIAL_TX_BUFFER_SIZE: "16" }, 15],
    [{ SERIAL_TX_BUFFER_SIZE: "256" }, 255],
  ])("HardwareSerial.h: with %o of the build there is room for %d bytes", (defines, room) => {
    const { bytes } = runSketch(
      "void setup() { Serial.begin(9600); Serial.write(Serial.availableForWrite()); } void loop() {}",
      { defines },
    );
    expect(bytes(9600).map(({ byte }) => byte)).toEqual([room]);
  });

  test("a size that is no plain number is refused", () => {
    const { end } = runSketch("void setup() { Serial.begin(9600); } void loop() {}", {
      defines: { SERIAL_RX_BUFFER_SIZE: "(1 << 5)" },
    });
    expect(end).toMatchObject({
      message: expect.stringMatching(/^cannot run: `Serial`: a size of its buffers/),
    });
  });

  test("nothing received: available 0, read and peek -1", () => {
    const { bytes } = runSketch(`
      void setup() { Serial.begin(9600); Serial.write(Serial.available()); Serial.write(Serial.read()); Serial.write(Serial.peek()); Serial.write(Serial ? 1 : 0); }
      void loop() {}
    `);
    expect(bytes(9600).map(({ byte }) => byte)).toEqual([0, 255, 255, 1]);
  });

  test("beside a handler of its own the sketch does not link, and is refused", () => {
    const { end, stoppedAt } = runSketch(
      "ISR(USART_UDRE_vect) {} void setup() { Serial.begin(9600); } void loop() {}",
    );
    expect(end).toMatchObject({
      message: expect.stringMatching(/^cannot run: `Serial` beside .*USART_UDRE_vect/),
    });
    expect(stoppedAt).toBe("Serial.begin(9600)");
  });

  test("Serial of an ATmega32U4 is its USB port, which is refused", () => {
    const { end } = runSketch("void setup() { Serial.begin(9600); } void loop() {}", {
      chip: "atmega32u4",
      wiring: {
        ...{ clock: "PD0", data: "PD1", transmit: "PD3", rts: "PB4", dtr: undefined },
        hasExternalPullUps: true,
        shifter: "inverting",
      },
    });
    expect(end).toMatchObject({ message: "cannot run: `Serial_::begin`: the bench has no USB" });
  });
});
