import { describe, expect, test } from "vitest";
import { ps2Connector, serialConnector } from "../../../src-core/model/connectors.ts";
import { pinLevel, polarity } from "../../../src-core/model/rs232.ts";

describe("RS-232 logic, overview SLLA607", () => {
  test.each([
    ["mark", "negative"],
    ["space", "positive"],
    ["off", "negative"],
    ["on", "positive"],
  ] as const)("%s is %s", (state, expected) => {
    expect(polarity(state)).toBe(expected);
  });

  test("behind an inverting shifter idle TX is high and RTS on reads low", () => {
    expect(pinLevel("mark", "inverting")).toBe(1);
    expect(pinLevel("on", "inverting")).toBe(0);
    expect(pinLevel("mark", "none")).toBe(0);
    expect(pinLevel("on", "none")).toBe(1);
  });
});

describe("connectors", () => {
  test("nine pins, mouse(4) and the 9-pin serial pinouts", () => {
    expect(serialConnector.pins.map(({ signal }) => signal).join(" ")).toBe(
      "DCD RXD TXD DTR GND DSR RTS CTS RI",
    );
  });

  test("six pins, The PS/2 Mouse/Keyboard Protocol", () => {
    const signals = Object.fromEntries(ps2Connector.pins.map(({ pin, signal }) => [pin, signal]));
    expect(signals).toMatchObject({ 1: "data", 3: "ground", 4: "+5 V", 5: "clock" });
  });
});
