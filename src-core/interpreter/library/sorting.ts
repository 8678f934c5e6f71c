import { moveBytes } from "./memory-functions.ts";
import { readBytes, writeBytes } from "./target-text.ts";
import { numberAt, type Subject } from "./values.ts";

/** Searching and sorting with the author's comparison: C11 7.22.5. */
export const sortingFunctions: Subject = {
  /** Elements that compare equal may come in any order (C11 7.22.5.2p4): here, in their old one. */
  qsort(parameters, memory, { callPointer }) {
    const [base = 0, count = 0, size = 0, compare = 0] = [0, 1, 2, 3].map((at) => numberAt(parameters, at));
    if (count < 2 || size === 0) return undefined;
    for (let place = 1; place < count; place += 1) {
      let at = place;
      while (at > 0) {
        const above = base + (at - 1) * size;
        if (Number(callPointer(compare, [above, above + size]) ?? 0) <= 0) break;
        const held = readBytes(memory, above, size);
        moveBytes(memory, above, above + size, size);
        writeBytes(memory, above + size, held);
        at -= 1;
      }
    }
    return undefined;
  },
  bsearch(parameters, _memory, { callPointer }) {
    const [key = 0, base = 0, count = 0, size = 0, compare = 0] = [0, 1, 2, 3, 4].map((at) =>
      numberAt(parameters, at),
    );
    let low = 0;
    let high = count;
    while (low < high) {
      const middle = (low + high) >> 1;
      const at = base + middle * size;
      const order = Number(callPointer(compare, [key, at]) ?? 0);
      if (order === 0) return at;
      if (order < 0) high = middle;
      else low = middle + 1;
    }
    return 0;
  },
};
