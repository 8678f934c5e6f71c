import { describe } from "vitest";
import { hoverTests, sampleScene, silenceTests } from "./scene.ts";

// The sketches. Figures by hand from: the serial class of the AVR sketch core 1.8.7 (U2X first) and the ATmega328P
// datasheet, BAUD = f / (8 (UBRR + 1)) with U2X; mouse(4); HT82M35X data sheet, p. 3 (wheel by 200, 100, 80, id 03);
// "The PS/2 Mouse/Keyboard Protocol", Host-to-Device; EM84502 data sheet, command table.

describe("hovers in the sketch", () => {
  const scene = sampleScene("ferry-sketch");

  hoverTests(scene, "ferry-sketch.ino", [
    // 16 MHz / (8 * 1667) = 1199.76 baud.
    [
      "Serial.begin(12§00",
      "1199.8 baud at 16 MHz",
      "The sketch core sets UBRR = 1666: f / (8 (UBRR + 1)) with U2X=1",
      "Error -0.02 % per bit",
      "margin 1.98 %",
    ],
    ["SERIAL_§7N1", "7N1: 7 data bits, no parity bit, one stop bit", "7.5 ms at 1200 baud", "As said: 7N1."],
    ["const uint8_t RTS_§PIN", "PD4 (pin 4): RTS of the PC", "PCINT20"],
    ["digitalRead(RTS_PIN§)", "PD4 (pin 4): RTS of the PC"],
    ["const unsigned long RETRY§_MS", "RETRY_MS = 500 = 0x1F4", "`unsigned long`: 32 bits on this chip"],
  ]);

  hoverTests(scene, "mouse_setup.ino", [
    ["const uint8_t CMD_RESET§ = 0xFF", "0xFF: reset"],
    ["const uint8_t CMD_RESET = 0x§FF", "0xFF: reset"],
    ["const uint8_t CMD_SET_SAMPLE§_RATE", "0xF3: set sample rate"],
    [
      "sampleRate(20§0)",
      "200: 200 reports per second (argument of 0xF3, set sample rate)",
      "Part of the sequence 200, 100, 80",
      "gives id 3",
      "HT82M35X",
    ],
    ["sampleRate(10§0)", "100: 100 reports per second (argument of 0xF3, set sample rate)", "200, 100, 80"],
    ["sampleRate(8§0)", "80: 80 reports per second (argument of 0xF3, set sample rate)", "200, 100, 80"],
    ["command(CMD_GET§_ID)", "0xF2: get device id", "its id"],
    ["const uint8_t REPLY_ACK§NOWLEDGE", "0xFA from the mouse: acknowledge"],
    ["REPLY_SELF_TEST_PASSED = 0x§AA", "0xAA from the mouse: self-test passed"],
    ["identity == ID_§WHEEL", "0x03: id of a wheel mouse, four-byte reports", "HT82M35X"],
    ["const uint8_t ID_WHEEL = 0x§03", "0x03: id of a wheel mouse, four-byte reports"],
    [
      "const unsigned int SELF_TEST§_TIMEOUT_MS",
      "After a reset the mouse is waited for 1200 ms",
      "at least 1000 ms",
    ],
  ]);

  hoverTests(scene, "ps2_port.cpp", [
    ["delayMicroseconds(12§0)", "Request to send: the clock is low for 120 us", "margin 20 us"],
    ["packet[0] == 0x§AA", "0xAA from the mouse: self-test passed"],
    ["i < CLOCK§_LOOKS", "CLOCK_LOOKS = 4000 = 0xFA0"],
  ]);

  hoverTests(scene, "ps2_port.h", [
    ["static const uint8_t RING§_SIZE", "RING_SIZE = 32 = 0x20", "`uint8_t`: 8 bits"],
  ]);

  silenceTests(scene, "ferry-sketch.ino", [
    "bool mouseReady = fal§se",
    "unsigned long lastTr§y = 0;",
    "uint8_t rep§ort[4]",
    "pinMode(RTS_PIN, IN§PUT)",
    "vo§id loop()",
    "Movement move§ment;",
  ]);
});

describe("hovers in the sketch with faults", () => {
  const scene = sampleScene("ferry-sketch-faults");

  hoverTests(scene, "ferry-sketch-faults.ino", [
    // 1 s / 1200 = 833.3 us: 830 us are 0.4 % less, 780 us 6.4 % less.
    [
      "delayMicroseconds(78§0)",
      "780 us on PD1: the data bits of a byte",
      "833.3 us",
      "6.4 % shorter",
      "up to 5.2 % slow or 5.1 % fast",
      "mouse(4)",
    ],
    ["const unsigned int BIT§_US", "830 us on PD1: the start bit of a byte", "0.4 % shorter"],
    [
      "  digitalWrite(TX_PIN, HIGH);\n  delayMicroseconds(BIT§_US);\n}",
      "830 us on PD1: the stop bit of a byte",
    ],
    ["delayMicrosec§onds(780)", "780 us on PD1: the data bits of a byte"],
    ["command(0xF§1)", "0xF1: no command that a PS/2 mouse knows", "There are 16", "0xFF"],
    ["command(6§0)", "60: 60 reports per second (argument of 0xF3, set sample rate)"],
    ["const uint8_t CLOCK§_PIN", "PD5 (pin 5): the PS/2 clock"],
  ]);
});
