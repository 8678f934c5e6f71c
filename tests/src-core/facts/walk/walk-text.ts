import { hardwareOf } from "../../../../src-core/facts/pins/hardware.ts";
import { driveOf } from "../../../../src-core/facts/pins/pin-change.ts";
import type { Event, Walk } from "../../../../src-core/facts/walk/events.ts";
import type { Value } from "../../../../src-core/facts/walk/values.ts";
import { walkFirmware } from "../../../../src-core/facts/walk/walk.ts";
import { factsOf } from "../../checks/harness.ts";

/** Walks firmware made of these files. */
export function walkOf(files: Readonly<Record<string, string>>): Walk {
  const { program } = factsOf(files);
  return walkFirmware(program, hardwareOf(program.chip));
}

const notes = "// @wire board atmega328p clock=16MHz\n#include <avr/io.h>\n#include <util/delay.h>\n";

/** Walks one C file with registers of an ATmega328P. */
export function walkC(text: string): Walk {
  return walkOf({ "main.c": `${notes}${text}` });
}

/** Walks a sketch on an ATmega328P board. */
export function walkSketch(text: string): Walk {
  return walkOf({ "adapter.ino": `// @wire board atmega328p clock=16MHz\n${text}` });
}

/** The events of the first entry as indented lines, as far as they do something outside the firmware. */
export function linesOf(walk: Walk, entry = 0): string[] {
  return linesIn(walk.entries[entry]?.events ?? []);
}

function linesIn(events: readonly Event[]): string[] {
  return events.flatMap(linesFor);
}

function linesFor(event: Event): string[] {
  switch (event.kind) {
    case "call":
      return linesIn(event.events);
    case "branch": {
      const sides = event.sides.map((side) => `[${linesIn(side).join(", ")}]`);
      return [`either ${sides.join(" or ")}`];
    }
    case "loop": {
      const passes = event.passes.map((pass) => `[${linesIn(pass).join(", ")}]`);
      const turns = event.turns === undefined ? "" : ` ${event.turns}`;
      return [`${event.form}${turns}: ${passes.join(" ")}`.trim()];
    }
    case "register-write":
      return [`${event.register.name} ${event.operator} ${valueText(event.value)}`];
    case "outside-call":
      return [`${event.name}(${event.arguments.map(valueText).join(", ")})`];
    case "pin":
      return [`${event.change.pin} ${driveOf(event.change.after)}`];
    case "leave":
      return event.how === "return" ? [] : [event.how];
    case "not-followed":
      return [`not followed: ${event.why}`];
    case "label":
    case "register-read":
    case "time-test":
    case "assembly":
      return [];
  }
}

function valueText(value: Value): string {
  switch (value.kind) {
    case "integer":
    case "floating":
      return String(value.value);
    case "address": {
      const { root } = value.place;
      return root.kind === "variable"
        ? `&${root.name}`
        : root.kind === "register"
          ? `&${root.register.name}`
          : "&";
    }
    case "function":
      return value.function.name;
    case "unknown":
      return "?";
  }
}

/** Arguments of every call of a function that is not in the project, in order. */
export function argumentsOf(walk: Walk, name: string): string[] {
  const found: string[] = [];
  const look = (events: readonly Event[]): void => {
    for (const event of events) {
      if (event.kind === "outside-call" && event.name === name)
        found.push(event.arguments.map(valueText).join(", "));
      if (event.kind === "call") look(event.events);
      if (event.kind === "branch") for (const side of event.sides) look(side);
      if (event.kind === "loop") for (const pass of event.passes) look(pass);
    }
  };
  for (const { events } of walk.entries) look(events);
  return found;
}
