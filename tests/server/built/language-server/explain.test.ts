import { expect, test } from "vitest";
import type {
  ExplainAnswer,
  ExplainedTerm,
} from "../../../../server/language-server/client-messages/explain.ts";
import { sessionOver } from "./sessions.ts";

test("a client asks for the terms that there are, and for the page of one", async () => {
  const session = await sessionOver({});
  const terms = await session.request<readonly ExplainedTerm[]>("edgewise/terms", {});
  expect(terms).toContainEqual({ name: "0xF4", kind: "command to the mouse", title: "enable reporting" });
  const page = await session.request<ExplainAnswer>("edgewise/explain", { term: "0xF4" });
  expect(page).toMatchObject({ kind: "page" });
  expect(page.kind === "page" && page.markdown).toContain("# 0xF4: enable reporting");
  expect(await session.request("edgewise/explain", { term: "0xF44" })).toEqual({
    kind: "unknown",
    near: ["0xf4"],
  });
});
