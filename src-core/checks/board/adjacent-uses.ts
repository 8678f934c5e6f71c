import type { Program } from "../../reader/program/program.ts";
import type { TypedBlock, TypedStatement } from "../../reader/typed/nodes.ts";
import { walkStatement } from "../../reader/typed/walk.ts";

/** Statements that use something shared, each with what it uses. */
export type Uses<Shared> = ReadonlyMap<TypedStatement, ReadonlySet<Shared>>;

/**
 * The statements beside this one that use what it uses, and all between them where these use something shared as well: what
 * is read by one and changed by the next must not change in between.
 */
export function usesAround<Shared>(
  program: Program,
  statement: TypedStatement,
  uses: Uses<Shared>,
): readonly TypedStatement[] {
  const statements = blockAround(program, statement)?.statements ?? [statement];
  const own = statements.indexOf(statement);
  let [from, to] = [own, own];
  while (from > 0 && uses.has(statements[from - 1] ?? statement)) from -= 1;
  while (to + 1 < statements.length && uses.has(statements[to + 1] ?? statement)) to += 1;
  const run = statements.slice(from, to + 1);
  return linked(run, run.indexOf(statement), uses);
}

/** The part of a run that hangs together by what its statements use. */
function linked<Shared>(
  run: readonly TypedStatement[],
  own: number,
  uses: Uses<Shared>,
): readonly TypedStatement[] {
  let [first, last] = [own, own];
  for (;;) {
    const used = new Set(run.slice(first, last + 1).flatMap((each) => [...(uses.get(each) ?? [])]));
    const sharing = run.flatMap((each, index) =>
      [...(uses.get(each) ?? [])].some((shared) => used.has(shared)) ? [index] : [],
    );
    const [lowest, highest] = [Math.min(first, ...sharing), Math.max(last, ...sharing)];
    if (lowest === first && highest === last) return run.slice(first, last + 1);
    [first, last] = [lowest, highest];
  }
}

function blockAround({ functions }: Program, statement: TypedStatement): TypedBlock | undefined {
  const { file, start } = statement.at.first;
  let found: TypedBlock | undefined;
  for (const { definition } of functions) {
    if (definition === undefined || found !== undefined) continue;
    const { first, last } = definition.body.at;
    if (first.file !== file || first.start > start || last.end < start) continue;
    walkStatement(definition.body, {
      statement(each) {
        if (each.kind === "block" && each.statements.includes(statement)) found = each;
        return found === undefined;
      },
    });
  }
  return found;
}
