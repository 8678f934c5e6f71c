import { type BaudFormula, baudGenerator, roundHalfUp, type Sampling } from "./baud-generator.ts";

/** K in f / (K (n + 1)). */
const FACTORS: Readonly<Record<string, number>> = {
  "BRGH=0": 64,
  "BRGH=1": 16,
  "BRG16=0 BRGH=0": 64,
  "BRG16=0 BRGH=1": 16,
  "BRG16=1 BRGH=0": 16,
  "BRG16=1 BRGH=1": 4,
};

const eightBits = { min: 0, max: 255 };
const sixteenBits = { min: 0, max: 65_535 };

/** Number of samples per bit: majority of three, their spacing in no text that was read. */
function sampling(id: string, registerRange: Sampling["registerRange"]): Sampling {
  return { id, samplesPerBit: undefined, registerRange };
}

const shared: Pick<BaudFormula, "families" | "baudOf" | "valueFor"> = {
  families: ["pic"],
  baudOf: (clockHz, { sampling: id, value }) => clockHz / ((FACTORS[id] ?? Number.NaN) * (value + 1)),
  valueFor: (clockHz, baud, { id }) => ({
    sampling: id,
    value: roundHalfUp(clockHz, (FACTORS[id] ?? Number.NaN) * baud) - 1,
  }),
};

/** EUSART with a 16-bit generator. `clockHz` is FOSC. */
export const pic = baudGenerator({
  ...shared,
  id: "pic",
  title: "PIC EUSART",
  formula: "f / (K (SPBRG + 1)), K = 64, 16 or 4 by BRG16 and BRGH",
  register: "SPBRGH:SPBRG",
  samplings: [
    sampling("BRG16=0 BRGH=0", eightBits),
    sampling("BRG16=0 BRGH=1", eightBits),
    sampling("BRG16=1 BRGH=0", sixteenBits),
    sampling("BRG16=1 BRGH=1", sixteenBits),
  ],
  sources: [
    { document: "pic18f66k80", place: "Example 22-1" },
    { document: "pic16lf1904", place: "Table 18-5" },
    { document: "pic18k22", place: "Table 16-5" },
    { document: "pic18k40", place: "Table 27-5" },
    { document: "pic16f1938", place: "Table 25-5" },
  ],
  confidence: "read",
  registersOf: ({ sampling: id, value }) => [
    { name: "SPBRG", value: value & 0xff },
    { name: "SPBRGH", value: value >> 8 },
    { name: "BRG16", value: id.includes("BRG16=1") ? 1 : 0 },
    { name: "BRGH", value: id.endsWith("BRGH=1") ? 1 : 0 },
  ],
});

/** USART of the older parts, with eight bits of SPBRG. `clockHz` is FOSC. */
export const picEightBit = baudGenerator({
  ...shared,
  id: "pic-eight-bit",
  title: "PIC USART",
  formula: "f / (64 (SPBRG + 1)) with BRGH=0, f / (16 (SPBRG + 1)) with BRGH=1",
  register: "SPBRG",
  samplings: [sampling("BRGH=0", eightBits), sampling("BRGH=1", eightBits)],
  sources: [{ document: "pic16f870", place: "Table 9-4" }],
  confidence: "read",
  registersOf: ({ sampling: id, value }) => [
    { name: "SPBRG", value },
    { name: "BRGH", value: id === "BRGH=1" ? 1 : 0 },
  ],
});
