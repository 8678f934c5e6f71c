import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { rules } from "../../src-core/checks/registry.ts";
import { readNotes } from "../../src-core/notes/read-notes.ts";
import { readSettings } from "../../src-core/notes/settings/read-settings.ts";
import { LexerCache } from "../../src-core/reader/lexer/lexer-cache.ts";
import { vocabulary } from "../../src-core/service/vocabulary.ts";

const readme = readFileSync("README.md", "utf8");
const manifest: { scripts: Readonly<Record<string, string>> } = JSON.parse(
  readFileSync("package.json", "utf8"),
);

function block(language: string): string {
  return new RegExp(`\`\`\`${language}\\n([\\s\\S]*?)\`\`\``).exec(readme)?.[1] ?? "";
}

describe("README says what is so", () => {
  it("lists every rule there is, and no other", () => {
    const table = readme.slice(readme.indexOf("| rule |"), readme.indexOf("Limits come from"));
    const named = [...table.matchAll(/`((?:board|serial|ps2|report|note)\/[a-z-]+)`/g)].map(([, id]) => id);
    expect(named.toSorted()).toEqual(rules.map(({ id }) => id).toSorted());
  });

  it("names scripts that there are", () => {
    const named = [...readme.matchAll(/npm (?:run )?(demo|test|package)\b/g)].map(([, name]) => name ?? "");
    expect(new Set(named)).toEqual(new Set(["demo", "test", "package"]));
    for (const name of named) expect(manifest.scripts).toHaveProperty(name);
  });

  it("shows an edgewise.json that is right", () => {
    expect(readSettings("edgewise.json", block("json"), vocabulary).problems).toEqual([]);
  });

  it("shows wire notes that are right", () => {
    const { comments } = new LexerCache().lex("README.c", block("c"), "c++");
    const { notes, problems } = readNotes(comments, vocabulary);
    expect(problems).toEqual([]);
    expect(notes.map(({ kind }) => kind)).toEqual(["board", "ps2", "serial", "means", "encodes", "allow"]);
  });
});
