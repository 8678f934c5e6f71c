import type { BranchEvent, CallEvent, Event, LoopEvent } from "./events.ts";

/** Events that stand for nothing but themselves. */
export type Leaf = Exclude<Event, CallEvent | BranchEvent | LoopEvent>;

/** What is carried along the paths of the firmware. States are values: they are never changed in place. */
export interface Follower<State> {
  /** `calls`: those around the event, outermost first; copy what is to be kept. */
  step(state: State, event: Leaf, calls: readonly CallEvent[]): State;
  /** What holds where either of two paths may have been taken. */
  join(a: State, b: State): State;
  /** Corrects the state behind a loop whose turns were not all walked; `before` is that in front of it. */
  behindLoop?(loop: LoopEvent, before: State, after: State): State;
  /** Whether none of the events, nor of those inside, changes the state; it is asked for the events of calls. */
  passesOver?(state: State, events: readonly Event[]): boolean;
  /** Called with the state at the end of the one turn that stands for all of an endless loop. */
  atTurnEnd?(state: State): void;
}

/** What a step along the paths hangs on. */
interface Following<State> {
  readonly follower: Follower<State>;
  readonly calls: CallEvent[];
  /** Of events that are passed over, whether a path comes to their end. */
  readonly comesBack: Map<readonly Event[], boolean>;
  /** States that wait for the label they have jumped to, in the function that is followed now. */
  jumps: Map<string | undefined, State> | undefined;
}

/** States that wait for the end of what they have left. */
interface Left<State> {
  returned: State | undefined;
  broken: State | undefined;
  continued: State | undefined;
}

const ended = Symbol("ended");

/** Follows all paths through the events of an entry; undefined where no path comes to the end. */
export function followPaths<State>(
  events: readonly Event[],
  start: State,
  follower: Follower<State>,
): State | undefined {
  const left: Left<State> = { returned: undefined, broken: undefined, continued: undefined };
  const following: Following<State> = { follower, calls: [], comesBack: new Map(), jumps: undefined };
  const state = followAll(events, start, following, left);
  return atEnd(state, left, following);
}

function either<State>(
  a: State | undefined,
  b: State | undefined,
  follower: Follower<State>,
): State | undefined {
  if (a === undefined) return b;
  return b === undefined ? a : follower.join(a, b);
}

/** What holds behind a function. Jumps that led to no label further on are followed as if they had left it. */
function atEnd<State>(
  state: State | typeof ended,
  left: Left<State>,
  { follower, jumps }: Following<State>,
): State | undefined {
  let behind = either(state === ended ? undefined : state, left.returned, follower);
  if (jumps !== undefined) for (const jumped of jumps.values()) behind = either(behind, jumped, follower);
  return behind;
}

/** What holds at a label: for the paths that come to it, and for those that jumped there. */
function atLabel<State>(
  state: State | typeof ended,
  name: string,
  { follower, jumps }: Following<State>,
): State | typeof ended {
  const jumped = jumps?.get(name);
  if (jumped === undefined) return state;
  jumps?.delete(name);
  return state === ended ? jumped : follower.join(state, jumped);
}

function followAll<State>(
  events: readonly Event[],
  start: State,
  following: Following<State>,
  left: Left<State>,
): State | typeof ended {
  let state: State | typeof ended = start;
  for (const event of events) {
    if (event.kind === "label") state = atLabel(state, event.name, following);
    else if (state !== ended) state = followOne(event, state, following, left);
  }
  return state;
}

function followOne<State>(
  event: Event,
  state: State,
  following: Following<State>,
  left: Left<State>,
): State | typeof ended {
  const { follower, calls } = following;
  switch (event.kind) {
    case "call": {
      if (follower.passesOver?.(state, event.events) !== true) return followCall(event, state, following);
      let comesBack = following.comesBack.get(event.events);
      if (comesBack === undefined) {
        comesBack = followCall(event, state, following) !== ended;
        following.comesBack.set(event.events, comesBack);
      }
      return comesBack ? state : ended;
    }
    case "branch":
      return followBranch(event, state, following, left);
    case "loop":
      return followLoop(event, state, following, left);
    case "leave": {
      const stepped = follower.step(state, event, calls);
      if (event.how === "return") left.returned = either(left.returned, stepped, follower);
      else if (event.how === "break") left.broken = either(left.broken, stepped, follower);
      else if (event.how === "continue") left.continued = either(left.continued, stepped, follower);
      else jump(stepped, event.label, following);
      return ended;
    }
    default:
      return follower.step(state, event, calls);
  }
}

function jump<State>(state: State, label: string | undefined, following: Following<State>): void {
  following.jumps ??= new Map();
  const waiting = following.jumps.get(label);
  following.jumps.set(label, waiting === undefined ? state : following.follower.join(waiting, state));
}

function followCall<State>(call: CallEvent, state: State, following: Following<State>): State | typeof ended {
  const { calls, jumps } = following;
  const inside: Left<State> = { returned: undefined, broken: undefined, continued: undefined };
  calls.push(call);
  following.jumps = undefined;
  const end = followAll(call.events, state, following, inside);
  const behind = atEnd(end, inside, following);
  following.jumps = jumps;
  calls.pop();
  return behind ?? ended;
}

function followBranch<State>(
  branch: BranchEvent,
  state: State,
  following: Following<State>,
  left: Left<State>,
): State | typeof ended {
  const { follower } = following;
  // The `break`s of a `switch` end there; those of an `if` belong to the loop around it.
  const isSwitch = branch.selector !== undefined;
  const inside: Left<State> = isSwitch ? { ...left, broken: undefined } : left;
  let joined: State | undefined;
  for (const side of branch.sides) {
    const end = followAll(side, state, following, inside);
    if (end !== ended) joined = either(joined, end, follower);
  }
  if (isSwitch) {
    left.returned = inside.returned;
    left.continued = inside.continued;
    joined = either(joined, inside.broken, follower);
  }
  return joined ?? ended;
}

function followLoop<State>(
  loop: LoopEvent,
  before: State,
  following: Following<State>,
  left: Left<State>,
): State | typeof ended {
  const { follower } = following;
  const inside: Left<State> = { returned: left.returned, broken: undefined, continued: undefined };
  let state: State | undefined = before;
  for (const pass of loop.passes) {
    if (state === undefined) break;
    inside.continued = undefined;
    const end: State | typeof ended = followAll(pass, state, following, inside);
    state = either(end === ended ? undefined : end, inside.continued, follower);
  }
  left.returned = inside.returned;
  if (loop.form === "endless") {
    if (state !== undefined) follower.atTurnEnd?.(state);
    state = undefined;
  } else if (loop.mayBeSkipped) state = either(state, before, follower);
  const behind = either(state, inside.broken, follower);
  if (behind === undefined) return ended;
  return follower.behindLoop?.(loop, before, behind) ?? behind;
}
