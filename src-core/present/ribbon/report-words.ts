import type { ReportValues } from "../../model/layouts/values.ts";

const buttons = [
  ["left", "L"],
  ["right", "R"],
  ["middle", "M"],
  ["button4", "4"],
  ["button5", "5"],
] as const;

/** "x +5 y −3 L": movements with their signs, then the buttons that are down. "at rest" for nothing of both. */
export function reportInWords(values: ReportValues): string {
  const words = [...movements(values).map(([name, value]) => `${name} ${value}`), ...down(values)];
  return words.length === 0 ? "at rest" : words.join(" ");
}

/** "+5 −3 L": the same for little room; y with x, as one is not clear without the other. */
export function reportInBrief(values: ReportValues): string {
  const both = (values.x ?? 0) !== 0 || (values.y ?? 0) !== 0;
  const wheel = (values.wheel ?? 0) === 0 ? [] : [`w${signed(values.wheel ?? 0)}`];
  const words = [...(both ? [signed(values.x ?? 0), signed(values.y ?? 0)] : []), ...wheel, ...down(values)];
  return words.length === 0 ? "0" : words.join(" ");
}

function movements(values: ReportValues): readonly (readonly [string, string])[] {
  return (["x", "y", "wheel"] as const).flatMap((name) => {
    const value = values[name] ?? 0;
    return value === 0 ? [] : [[name, signed(value)] as const];
  });
}

function down(values: ReportValues): readonly string[] {
  return buttons.flatMap(([name, letter]) => (values[name] === true ? [letter] : []));
}

function signed(value: number): string {
  if (value === 0) return "0";
  return value < 0 ? `\u2212${-value}` : `+${value}`;
}
