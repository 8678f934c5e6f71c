import type { Facts } from "../../facts/facts.ts";
import type { Line, Ps2Pin } from "../../facts/ps2/ps2-facts.ts";
import type { RelatedPlace } from "../../finding.ts";
import { spanOf } from "../literal.ts";

/** Where it stands which pins the lines are. */
export function pinPlaces(facts: Facts, lines: readonly Line[]): RelatedPlace[] {
  return lines.flatMap((line) => {
    const pin = facts.ps2[line];
    return pin === undefined ? [] : [{ span: spanOf(pin.span), message: reason(line, pin) }];
  });
}

function reason(line: Line, { by, text }: Ps2Pin): string {
  switch (by) {
    case "said":
      return `the ${line} line is ${text}`;
    case "request":
      return `${text} is taken as the ${line} line, because of the request to send here`;
    case "interrupt":
      return `${text} is taken as the ${line} line, because of this handler`;
  }
}
