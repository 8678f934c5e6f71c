import type { Stop } from "../../interpreter/outcome.ts";
import type { At } from "../../reader/typed/nodes.ts";

/** Why a function cannot be tried, or not to the end: said to the author at the place. */
export class NotTried extends Error {
  readonly at: At | undefined;
  /** Nothing is wrong with it: someone did not want to wait. */
  readonly cancelled: boolean;

  constructor(why: string, at: At | undefined, cancelled = false) {
    super(why);
    this.at = at;
    this.cancelled = cancelled;
  }
}

/** `instead` is the place where the run itself knows none; `asked` are registers that nothing is behind. */
export function stopped(stop: Stop, instead?: At, asked: readonly string[] = []): NotTried {
  return new NotTried(reasonOf(stop, asked), stop.at ?? instead, stop.reason === "cancelled");
}

function reasonOf({ reason, message }: Stop, asked: readonly string[]): string {
  switch (reason) {
    case "steps":
      return `one call takes ${message}, as a loop without end does${waiting(asked)}`;
    case "recursion":
      return `one call makes ${message}, as recursion without end does`;
    default:
      return message;
  }
}

function waiting(asked: readonly string[]): string {
  return asked.length === 0 ? "" : `; it may wait for ${asked.join(", ")}, which nothing changes in a trial`;
}
