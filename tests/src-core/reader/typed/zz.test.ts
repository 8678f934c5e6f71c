import { test } from "vitest";
import { functionNamed, typeSource } from "./type-source.ts";
test("x", async () => {
  const u = await typeSource("enum e { A,B}; void probe_(void) { (A);(sizeof(A)); (~A); (A | B); (A*2); (A+1u); (-A);((enum e)A == 7); }", "c");
  console.log(functionNamed(u,"probe_").definition?.body.statements.map(s=>s.kind), u.problems);
});
