import type { Chip, Usart } from "../../model/chips/chip.ts";
import { visibleRange, visibleSpan } from "../../reader/tokens.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { walkExpression } from "../../reader/typed/walk.ts";
import type { DataModel } from "../../reader/types/types.ts";
import type { Walk } from "../walk/events.ts";
import { integerOf } from "../walk/values.ts";
import { principalWrite, rateOf } from "./divisor-rate.ts";
import type { Select, SetFormat, SetUp } from "./serial-facts.ts";
import type { Step } from "./steps.ts";
import { topBitOf } from "./top-bit.ts";
import { bitIn, formatOf, stateAfter } from "./usart-state.ts";
import { type DivisorWrite, divisorWrites, type UsartWrite, usartWrites } from "./usart-writes.ts";
import { usartRegisters } from "./usarts.ts";

/** Set-ups of USARTs by their registers, in the order of the code. */
export function usartSetUps(
  steps: readonly Step[],
  walk: Walk,
  chip: Chip | undefined,
  model: DataModel,
): readonly SetUp[] {
  const registers = usartRegisters(chip);
  const writes = usartWrites(steps, registers);
  const usarts = new Set(writes.map(({ usart }) => usart));
  return [...usarts].flatMap((usart) => {
    const own = writes.filter((each) => each.usart === usart);
    const topBit = topBitOf(walk, (event) => {
      if (event.kind !== "register-write") return [];
      const found = registers.get(event.register.name);
      return found?.part === "data" && found.usart === usart ? [event.value] : [];
    });
    return divisorWrites(own).flatMap((divisor) => setUpOf(usart, divisor, own, topBit, model) ?? []);
  });
}

function setUpOf(
  usart: Usart,
  divisor: DivisorWrite,
  all: readonly UsartWrite[],
  topBit: SetUp["topBit"],
  model: DataModel,
): SetUp | undefined {
  const principal = principalWrite(divisor);
  if (principal === undefined) return undefined;
  const { write, step } = principal;
  const at = write.value.from?.at ?? write.at;
  const enables = (place: Usart["bits"]["transmitEnable"]) =>
    all.some((each) => each.part === "b" && bitIn({ known: 0xff, ones: each.write.ones }, place) === 1);
  return {
    port: { kind: "uart", uart: usart.number },
    by: "registers",
    span: visibleRange(at.first, at.last),
    expression: write.value.from,
    target: { span: visibleSpan(write.at.first), name: write.register.name, whole: usart.divisor?.name },
    rate: rateOf(divisor, model),
    needsClock: write.value.from !== undefined && namesClock(write.value.from),
    format: formatSet(usart, [...divisor.before, ...divisor.following]),
    transmits: enables(usart.bits.transmitEnable),
    receives: enables(usart.bits.receiveEnable),
    topBit,
    conditional: step.conditional,
  };
}

function formatSet(usart: Usart, writes: readonly UsartWrite[]): SetFormat {
  const last = writes.filter((each) => each.part === "c").at(-1);
  const expression = last?.write.value.from;
  const at = expression?.at ?? last?.write.at;
  return {
    format: formatOf(usart, stateAfter("b", usart, writes), stateAfter("c", usart, writes)),
    expression,
    span: at && visibleRange(at.first, at.last),
    register: usart.control[2].name,
    assigned: last?.write.operator === "=" ? integerOf(last.write.value) : undefined,
    select: selectOf(usart, last),
  };
}

function selectOf({ bits, divisorHigh }: Usart, last: UsartWrite | undefined): Select | undefined {
  if (bits.select === undefined) return undefined;
  const takenBy = last?.lost === true ? divisorHigh.name : undefined;
  return { name: bits.select.name, mask: 1 << bits.select.bit, takenBy };
}

/** `F_CPU` that is left as a name: nothing defines it. */
function namesClock(expression: TypedExpression): boolean {
  let found = false;
  walkExpression(expression, {
    expression(inner) {
      found ||= inner.kind === "unresolved" && inner.name === "F_CPU";
      return !found;
    },
  });
  return found;
}
