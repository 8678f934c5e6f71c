import type { ReportLayout } from "../../model/layouts/layout.ts";
import { movementRange } from "../../model/layouts/values.ts";
import type { Movement, OfferedMovement } from "../../trial-details.ts";
import { isMovement } from "../subject/operands.ts";
import { givenOf } from "./in-layout.ts";

/** Movements worth a look with a layout, each once, with what its reports can say of them. */
export function usualMovements(layout: ReportLayout): readonly OfferedMovement[] {
  const largest = (name: "x" | "y"): number => {
    const field = layout.movements.find((each) => each.name === name);
    if (field === undefined) return 0;
    const { min, max } = movementRange(field);
    return Math.min(max, -min);
  };
  const buttons = layout.fields.flatMap((field) => (isMovement(field) ? [] : [field]));
  const movements = [
    moved({ right: 12, down: 5, press: ["left"] }),
    ...[1, -1, largest("x"), -largest("x")].map((right) => moved({ right })),
    ...[1, -1, largest("y"), -largest("y")].map((down) => moved({ down })),
    moved({ right: -3, down: -7, press: ["right"] }),
    moved({ right: -100, down: 100 }),
    moved({ right: 300, down: -300 }),
    ...(layout.movements.some(({ name }) => name === "wheel")
      ? [moved({ wheel: 1 }), moved({ wheel: -1 })]
      : []),
    ...buttons.map((button) => moved({ press: [button] })),
    moved({ press: buttons }),
    moved({}),
  ];
  const byText = new Map(movements.map((each) => [givenOf(layout, each), each]));
  return [...byText].map(([given, movement]) => ({ given, movement }));
}

function moved(said: Partial<Movement>): Movement {
  return { right: 0, down: 0, wheel: 0, press: [], ...said };
}
