import type { FunctionSymbol } from "../../reader/typed/nodes.ts";

const noConverter = "the bench has no analogue converter";
const noWaves = "the bench makes no waves for the sketch core";

const functions: Readonly<Record<string, string>> = {
  analogRead: noConverter,
  analogReference: noConverter,
  analogWrite: noWaves,
  tone: noWaves,
  noTone: noWaves,
};

const classes: Readonly<Record<string, string>> = {
  Serial_: "the bench has no USB",
  SoftwareSerial: "the bench does not run this library",
  TwoWire: "the bench has no two-wire bus",
  SPIClass: "the bench has no SPI bus",
  SPISettings: "the bench has no SPI bus",
  EEPROMClass: "the bench has no EEPROM",
  EERef: "the bench has no EEPROM",
};

/** Why the bench cannot do what a function of the core or of its libraries does; undefined for any other. */
export function refusalOf({ name, qualifiedName, memberOf }: FunctionSymbol): string | undefined {
  const [among, key] = memberOf === undefined ? [functions, name] : [classes, memberOf.name ?? ""];
  return Object.hasOwn(among, key) ? `\`${qualifiedName}\`: ${among[key]}` : undefined;
}
