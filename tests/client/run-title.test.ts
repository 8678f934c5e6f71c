import { expect, test } from "vitest";
import { runTitle } from "../../client/run-title.ts";

const ferry = { project: "/harbour/ferry", name: "ferry" };
const quay = { project: "/harbour/quay", name: "quay" };
const around = { stroke: "nudge", mouse: "plain", pc: "rts-toggle" };

test("runs of two firmwares can be told apart by their tabs", () => {
  const titles = [ferry, quay].map(({ project }) => runTitle({ project, ...around }, [ferry, quay]));
  expect(titles).toEqual(["Run: nudge, plain, rts-toggle (ferry)", "Run: nudge, plain, rts-toggle (quay)"]);
});

test("the only firmware is not named", () => {
  expect(runTitle({ project: ferry.project, ...around }, [ferry])).toBe("Run: nudge, plain, rts-toggle");
});
