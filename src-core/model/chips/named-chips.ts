import type { Source } from "../sources.ts";
import type { ChipFamily, DataModelName, NamedChip } from "./chip.ts";

interface Family {
  readonly family: ChipFamily;
  readonly dataModel: DataModelName;
  readonly baudGenerators: readonly string[];
  readonly sources: readonly Source[];
  /** Printed names; the note writes them in lower case. */
  readonly chips: readonly string[];
}

const families: readonly Family[] = [
  {
    family: "avr-dx",
    dataModel: "avr",
    baudGenerators: ["avr-fractional"],
    sources: [{ document: "avr0SeriesUsart", place: "" }],
    chips: [
      "ATtiny402",
      "ATtiny412",
      "ATtiny414",
      "ATtiny1604",
      "ATtiny1614",
      "ATtiny1616",
      "ATtiny3216",
      "ATtiny3217",
      "ATmega4808",
      "ATmega4809",
      "AVR32DA28",
      "AVR128DA28",
      "AVR128DA48",
      "AVR128DB28",
      "AVR128DB48",
      "AVR64DD28",
    ],
  },
  {
    family: "samd21",
    dataModel: "ilp32",
    baudGenerators: ["samd21-arithmetic", "samd21-fractional"],
    sources: [{ document: "samd21", place: "Table 25-2" }],
    chips: ["ATSAMD21E18A", "ATSAMD21G18", "ATSAMD21G18A", "ATSAMD21J18A"],
  },
  {
    family: "stm32f1",
    dataModel: "ilp32",
    baudGenerators: ["stm32f1"],
    sources: [{ document: "rm0008", place: "Table 192" }],
    chips: ["STM32F100C8", "STM32F103C6", "STM32F103C8", "STM32F103CB", "STM32F103RB", "STM32F103RC"],
  },
  {
    family: "stm32f4",
    dataModel: "ilp32",
    baudGenerators: ["stm32f4"],
    sources: [{ document: "rm0090", place: "Tables 134 to 139" }],
    chips: ["STM32F401CC", "STM32F401CE", "STM32F405RG", "STM32F407VG", "STM32F411CE", "STM32F446RE"],
  },
  {
    family: "stm32f0",
    dataModel: "ilp32",
    baudGenerators: ["stm32f0"],
    sources: [{ document: "rm0091", place: "Table 85" }],
    chips: ["STM32F030F4", "STM32F042K6", "STM32F051R8", "STM32F072CB"],
  },
  {
    family: "rp2040",
    dataModel: "ilp32",
    baudGenerators: ["rp2040"],
    sources: [{ document: "rp2040", place: "4.2" }],
    chips: ["RP2040"],
  },
  {
    family: "pic",
    dataModel: "unknown",
    baudGenerators: ["pic"],
    sources: [{ document: "pic18f66k80", place: "Table 22-1" }],
    chips: [
      "PIC16F1827",
      "PIC16F1938",
      "PIC16F1939",
      "PIC16LF1904",
      "PIC16LF1906",
      "PIC16LF1907",
      "PIC18F1220",
      "PIC18F2550",
      "PIC18F25K22",
      "PIC18F26K40",
      "PIC18F45K40",
      "PIC18F4550",
      "PIC18F66K80",
    ],
  },
  {
    family: "pic",
    dataModel: "unknown",
    baudGenerators: ["pic-eight-bit"],
    sources: [{ document: "pic16f870", place: "Table 9-4" }],
    chips: ["PIC16F628A", "PIC16F870", "PIC16F871", "PIC16F877A"],
  },
  {
    family: "mcs51",
    dataModel: "unknown",
    baudGenerators: ["mcs51-timer1"],
    sources: [{ document: "manual8051", place: "2.13.4" }],
    chips: ["8051", "8052", "AT89C51", "AT89S51", "AT89S52", "AT89C2051", "AT89C4051"],
  },
  {
    family: "esp8266",
    dataModel: "ilp32",
    baudGenerators: ["esp8266"],
    sources: [{ document: "esp8266Description", place: "UART_CLKDIV" }],
    chips: ["ESP8266", "ESP8285"],
  },
  {
    family: "esp32",
    dataModel: "ilp32",
    baudGenerators: ["esp32"],
    sources: [{ document: "espRegisters", place: "UART_CLKDIV_REG" }],
    chips: ["ESP32"],
  },
  {
    family: "esp32",
    dataModel: "ilp32",
    baudGenerators: ["esp32-predivider"],
    sources: [{ document: "espRegisters", place: "UART_CLKDIV_REG" }],
    chips: ["ESP32-S3", "ESP32-C3", "ESP32-C6"],
  },
  {
    family: "ch32v003",
    dataModel: "ilp32",
    baudGenerators: ["ch32v003"],
    sources: [{ document: "ch32v003", place: "12.3" }],
    chips: ["CH32V003", "CH32V003F4P6", "CH32V003J4M6"],
  },
];

/** Chips known by name, family and baud generator. */
export const namedChips: readonly NamedChip[] = families.flatMap(
  ({ family, dataModel, baudGenerators, sources, chips }) =>
    chips.map((printedName) => ({
      kind: "named",
      name: printedName.toLowerCase(),
      printedName,
      family,
      dataModel,
      baudGenerators,
      uarts: undefined,
      sources,
    })),
);
