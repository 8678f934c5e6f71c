/** A document whose figures the model carries. */
export interface CitedDocument {
  readonly title: string;
  /** Author or publisher. */
  readonly author: string;
  /** Undefined where the document bears no date. */
  readonly year: number | undefined;
}

/** Where in a document a figure stands. */
export interface Source {
  readonly document: DocumentName;
  /** Section, table, figure or page; empty where the document as a whole says it. */
  readonly place: string;
}

/**
 * How sure a figure is: `read` in the cited text; typed from `memory` of it; `common practice` with no text
 * behind it; `computed` from figures that were read.
 */
export type Confidence = "read" | "memory" | "common practice" | "computed";

const timingDocuments = {
  ps2ProtocolArticle: {
    title: "The PS/2 Mouse/Keyboard Protocol",
    author: "Adam Chapweske",
    year: 2003,
  },
  auxiliaryDeviceTimings: {
    title: "PS/2 Keyboard & Mouse Protocols: Auxiliary Device and System Timings",
    author: "Network Technologies Inc",
    year: undefined,
  },
  lpc47m102: { title: "LPC47M102S data sheet", author: "SMSC", year: undefined },
  nt6881: { title: "NT6881 keyboard controller data sheet V2.6", author: "not named", year: undefined },
  touchpadGuide: {
    title: "TouchPad Interfacing Guide, 2nd edition, 510-000080-A",
    author: "Synaptics",
    year: 2001,
  },
  desktopReference: { title: "Technical Reference Guide (desktop PC)", author: "Compaq", year: 2000 },
  hdns2200: { title: "HDNS-2200 optical mouse chip data sheet", author: "Agilent", year: undefined },
  sc84502: { title: "SC84502 mouse controller data sheet rev 1.0", author: "Silan", year: 2000 },
  sc84510: { title: "SC84510 mouse controller data sheet rev 1.0", author: "Silan", year: 2000 },
  sc84512: { title: "SC84512 mouse controller data sheet", author: "Silan", year: undefined },
  em84502: { title: "EM84502 mouse controller data sheet", author: "ELAN", year: 2001 },
  tp8452: { title: "TP8452 mouse controller data sheet", author: "Topro", year: undefined },
  ekk8011: { title: "EKK8011 keyboard encoder product specification V1.0", author: "EMC", year: 2003 },
  reference5160: {
    title: "Technical Reference, 5160 (101/102-key keyboard)",
    author: "IBM",
    year: 1986,
  },
  reference5170: { title: "Technical Reference, 5170", author: "IBM", year: 1986 },
  reference560: {
    title: "Technical Reference, model 560/560E notebook",
    author: "IBM",
    year: 1997,
  },
  ht82k28: { title: "HT82K28 keyboard encoder data sheet", author: "Holtek", year: undefined },
  ps2PortEntry: { title: "PS/2 port", author: "Wikipedia", year: undefined },
} as const satisfies Record<string, CitedDocument>;

const mouseDocuments = {
  ht82m35x: { title: "HT82M35X PS/2 mouse controller data sheet rev 1.00", author: "Holtek", year: 2007 },
  paw3402: { title: "PAW3402/PAW3412 PS/2 optical mouse data sheet V1.0", author: "PixArt", year: 2008 },
  adnk5023: { title: "ADNK-5023 design manual", author: "Avago", year: undefined },
  sentelicNotes: {
    title: "Linux kernel documentation, input/sentelic",
    author: "Sentelic Corp",
    year: 2010,
  },
  psmouseSource: {
    title: "Linux kernel, drivers/input/mouse/psmouse-base.c",
    author: "Vojtech Pavlik",
    year: undefined,
  },
  libps2Source: {
    title: "Linux kernel, drivers/input/serio/libps2.c",
    author: "Vojtech Pavlik, Dmitry Torokhov",
    year: 2004,
  },
  ps2GpioSource: {
    title: "Linux kernel, drivers/input/serio/ps2-gpio.c",
    author: "Danilo Krummrich",
    year: undefined,
  },
  psmManual: { title: "FreeBSD manual psm(4)", author: "Kazutaka Yokota", year: 2000 },
  interruptList: {
    title: "PC interrupt list, INT 15h AX=C201h (pointing device reset)",
    author: "Ralf Brown",
    year: undefined,
  },
} as const satisfies Record<string, CitedDocument>;

const serialDocuments = {
  mouseManual: {
    title: "Linux manual mouse(4), man-pages 6.03",
    author: "Michael Haardt, Andries Brouwer",
    year: 2023,
  },
  sermouseSource: {
    title: "Linux kernel, drivers/input/mouse/sermouse.c",
    author: "Vojtech Pavlik",
    year: 2001,
  },
  mousedSource: {
    title: "FreeBSD moused.c",
    author: "Michael Smith, Kazutaka Yokota",
    year: 1999,
  },
  bsdMouseManual: { title: "FreeBSD manual mouse(4)", author: "Kazutaka Yokota", year: 1997 },
  dosDriverProtocol: {
    title: "PROTOCOL.TXT of a DOS mouse driver, version 1.9",
    author: "FreeDOS",
    year: undefined,
  },
  externalComSpecification: {
    title: "Plug and Play External COM Device Specification v1.00",
    author: "Microsoft, Hayes",
    year: 1995,
  },
  serenumSample: {
    title: "Windows driver sample serenum (enum.c, serenum.h)",
    author: "Microsoft",
    year: 1997,
  },
  reactosSerenum: {
    title: "ReactOS drivers/bus/serenum/detect.c",
    author: "ReactOS project",
    year: undefined,
  },
  kudzuSource: { title: "kudzu serial.c", author: "Red Hat", year: 2003 },
  ht6513b: { title: "HT6513B serial mouse controller data sheet", author: "Holtek", year: 2000 },
  em84520: { title: "EM84520 serial mouse controller data sheet", author: "ELAN", year: 1999 },
  em83702: { title: "EM83702 serial mouse controller data sheet", author: "ELAN", year: undefined },
  pc8801Memorandum: {
    title: "PC-8801 Memorandum: Serial mouse",
    author: "hitchhikr.net",
    year: undefined,
  },
} as const satisfies Record<string, CitedDocument>;

const levelDocuments = {
  rs232Overview: {
    title: "RS-232 overview SLLA607",
    author: "Texas Instruments",
    year: 2023,
  },
  mc1488: { title: "MC1488 line driver data sheet", author: "ON Semiconductor", year: undefined },
  touchscreenManual: {
    title: "Touchscreen controller manual, Table B.5 (clauses of EIA/TIA-232-E)",
    author: "Elo TouchSystems",
    year: undefined,
  },
  v28: { title: "Recommendation V.28", author: "ITU-T", year: 1993 },
  serialPortComplete: { title: "Serial Port Complete", author: "Jan Axelson", year: undefined },
  ds14185: { title: "DS14185 data sheet", author: "National Semiconductor", year: undefined },
  in145403: { title: "IN145403 data sheet", author: "not named", year: undefined },
  ninePinPinouts: { title: "9-pin serial pinouts", author: "Antona Corp", year: 2009 },
  connectorReference: {
    title: "Technical Reference Guide, keyboard/pointing-device connector",
    author: "HP",
    year: undefined,
  },
  rs232Summary: {
    title: "RS-232-C summary quoted in a CR4 forum thread",
    author: "GlobalSpec",
    year: undefined,
  },
} as const satisfies Record<string, CitedDocument>;

const chipDocuments = {
  avrLibcHeaders: {
    title: "avr-libc 2.0.0 device headers (avr/io.h)",
    author: "avr-libc project",
    year: undefined,
  },
  sketchCorePins: {
    title: "Pin tables of the AVR sketch core, arduino-core-avr 1.8.7",
    author: "arduino-core-avr project",
    year: undefined,
  },
  atmega328pPreliminary: {
    title: "ATmega328P (automotive) datasheet 7810C",
    author: "Atmel",
    year: 2012,
  },
  atmega328Family: {
    title: "ATmega48A/PA/88A/PA/168A/PA/328/P datasheet 8271",
    author: "Atmel",
    year: 2014,
  },
  atmega328pb: { title: "ATmega328PB datasheet", author: "Microchip", year: undefined },
  atmega328Ranges: {
    title: "ATmega48PA/88PA/168PA/328P datasheet 8161D",
    author: "Atmel",
    year: undefined,
  },
  atmega328Current: { title: "ATmega328P datasheet DS40002061A", author: "Microchip", year: undefined },
  atmega48: { title: "ATmega48/88/168 datasheet 2545", author: "Atmel", year: 2005 },
  atmega32u4: { title: "ATmega16U4/32U4 datasheet 7766J", author: "Atmel", year: 2016 },
  atmega2560: {
    title: "ATmega640/1280/1281/2560/2561 datasheet 2549A",
    author: "Atmel",
    year: 2005,
  },
  attiny2313: { title: "ATtiny2313 datasheet 2543A", author: "Atmel", year: 2003 },
  attiny2313a: { title: "ATtiny2313A/4313 datasheet 8246A", author: "Atmel", year: 2009 },
  attiny85: { title: "ATtiny25/45/85 datasheet 2586", author: "Atmel", year: undefined },
  attiny261a: { title: "ATtiny261A/461A/861A datasheet 8197C", author: "Atmel", year: undefined },
  avr0SeriesUsart: {
    title: "USART chapters of the tinyAVR and megaAVR 0-series and AVR Dx datasheets",
    author: "Microchip",
    year: undefined,
  },
  samd21: { title: "SAM D21 datasheet DS40001882D", author: "Microchip", year: undefined },
  rm0008: { title: "STM32F1 reference manual RM0008", author: "STMicroelectronics", year: undefined },
  rm0090: { title: "STM32F4 reference manual RM0090", author: "STMicroelectronics", year: undefined },
  rm0390: { title: "STM32F446 reference manual RM0390", author: "STMicroelectronics", year: undefined },
  rm0091: { title: "STM32F0 reference manual RM0091", author: "STMicroelectronics", year: undefined },
  rm0352: { title: "Reference manual RM0352 (PL011)", author: "STMicroelectronics", year: undefined },
  rp2040: { title: "RP2040 datasheet", author: "Raspberry Pi", year: undefined },
  pic18f66k80: { title: "PIC18F66K80 datasheet DS39977F", author: "Microchip", year: undefined },
  pic16lf1904: { title: "PIC16LF1904/6/7 datasheet", author: "Microchip", year: undefined },
  pic18k22: { title: "PIC18(L)F2X/4XK22 datasheet DS41412C", author: "Microchip", year: undefined },
  pic18k40: { title: "PIC18(L)F26/45/46K40 datasheet DS40001816C", author: "Microchip", year: undefined },
  pic16f1938: { title: "PIC16(L)F1938/9 datasheet DS41574A", author: "Microchip", year: undefined },
  pic16f870: { title: "PIC16F870/871 datasheet DS30569C", author: "Microchip", year: undefined },
  manual8051: { title: "8051 hardware manual 4316E", author: "Atmel", year: 2007 },
  espRegisters: {
    title: "ESP32 UART register header and low-level driver",
    author: "Espressif",
    year: undefined,
  },
  esp8266Description: {
    title: "ESP8266 peripheral access description",
    author: "open-source project",
    year: undefined,
  },
  ch32v003: { title: "CH32V003 reference manual V1.3", author: "WCH", year: undefined },
  resonatorCatalogue: { title: "Ceramic resonator catalogue P16E", author: "not named", year: 2018 },
} as const satisfies Record<string, CitedDocument>;

/** Every cited document, under a short name of our own. */
const documents = {
  ...timingDocuments,
  ...mouseDocuments,
  ...serialDocuments,
  ...levelDocuments,
  ...chipDocuments,
} as const;

export type DocumentName = keyof typeof documents;

/** Title and place as messages and hovers name a source: `"LPC47M102S data sheet, Fig. 33 t3"`. */
export function formatSource(source: Source): string {
  const { title } = documents[source.document];
  return source.place === "" ? title : `${title}, ${source.place}`;
}

/** Sources joined with `; `, each said once; empty where there is none. */
export function formatSources(sources: readonly Source[]): string {
  return [...new Set(sources.map(formatSource))].join("; ");
}

/** What to print after a figure that was not read in a text; undefined for one that was. */
export function formatConfidence(confidence: Confidence): string | undefined {
  switch (confidence) {
    case "read":
      return undefined;
    case "memory":
      return "from memory of the document";
    case "common practice":
      return "common practice, no source";
    case "computed":
      return "computed from the cited figures";
  }
}
