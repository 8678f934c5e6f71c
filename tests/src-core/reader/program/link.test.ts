import { describe, expect, test } from "vitest";
import { isStandIn } from "../../../../src-core/reader/tokens.ts";
import type { FunctionSymbol, Variable } from "../../../../src-core/reader/typed/nodes.ts";
import { readFiles } from "./read-files.ts";

const names = (symbols: readonly (FunctionSymbol | Variable)[]) => symbols.map(({ name }) => name).sort();

describe("a program of several units (C11 6.2.2, C++11 3.5)", () => {
  const files = {
    "ps2.h": "#include <stdint.h>\nextern volatile uint8_t ready;\nvoid ps2_send(uint8_t command);\n",
    "ps2.c":
      '#include "ps2.h"\nvolatile uint8_t ready = 1;\nstatic int hidden;\nvoid ps2_send(uint8_t command) { ready = command; }\n',
    "main.c": '#include "ps2.h"\nstatic int hidden;\nint main(void) { ps2_send(0xF4); return ready; }\n',
  };

  test("a declaration leads to the definition in another file", async () => {
    const program = await readFiles(files);
    const main = program.units[1]?.typed;
    const declared = main?.functions.find(({ name }) => name === "ps2_send");
    expect(declared?.definition).toBeUndefined();
    const defined = declared && program.definitionOf(declared);
    expect(defined?.at.first.file).toBe("ps2.c");
    expect(defined?.definition?.body.statements).toHaveLength(1);
  });

  test("each function and variable is there once, static ones for each unit", async () => {
    const program = await readFiles(files);
    expect(names(program.functions)).toEqual(["main", "ps2_send"]);
    expect(names(program.variables)).toEqual(["hidden", "hidden", "ready"]);
    const ready = program.units[1]?.typed.variables.find(({ name }) => name === "ready");
    expect(ready && program.definingVariable(ready).at.first.file).toBe("ps2.c");
    expect(program.problems).toEqual([]);
  });

  test('overloads link by their parameters, extern "C" by name', async () => {
    const program = await readFiles({
      "a.cpp": 'void put(int) {}\nvoid put(long) {}\nextern "C" void low(void) {}\n',
      "b.cpp": 'void put(long); extern "C" void low(void); void use() { put(1L); low(); }\n',
    });
    const put = program.units[1]?.typed.functions.find(({ name }) => name === "put");
    expect(put && program.definitionOf(put)?.type.parameters).toMatchObject([{ name: "long" }]);
    const low = program.units[1]?.typed.functions.find(({ name }) => name === "low");
    expect(low && program.definitionOf(low)?.at.first.file).toBe("a.cpp");
  });

  test("a sketch calls what stands in its later tabs", async () => {
    const program = await readFiles({
      "adapter.ino":
        "void setup() { pinMode(2, INPUT_PULLUP); Serial.begin(1200, SERIAL_7N1); }\nvoid loop() { pump(read()); }\n",
      "port.ino":
        "int read() { return digitalRead(2); }\nvoid pump(int bit) { if (bit) Serial.write('M'); }\n",
    });
    const { typed } = program.units[0] ?? {};
    const loop = typed?.functions.find(({ name }) => name === "loop");
    expect(loop?.definition?.body.statements[0]).toMatchObject({
      expression: {
        kind: "call",
        callee: { function: { name: "pump", standIn: false } },
        arguments: [{ kind: "call", callee: { function: { name: "read" } } }],
      },
    });
    expect(program.functions.every((symbol) => !isStandIn(symbol.at.first.file))).toBe(true);
  });
});
