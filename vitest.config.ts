import { defineConfig } from "vitest/config";
import { LeftOutSuites } from "./tests/house/left-out-suites.ts";
import { RuleTable } from "./tests/house/rule-table.ts";

/** Suites that need more than the installed packages, and what they need. */
const elsewhere = {
  endurance: "feeds the reader every prefix of every sample and much that is broken: npm run endurance",
  firmwares: "runs whole firmwares with planted faults on the bench: npm run firmwares",
  oracle: "compares with avr-gcc and gcc, which must be installed: npm run oracle",
  package: "builds the .vsix and looks into it: npm run test:package",
  editor: "drives a real editor, which it downloads first: npm run editor",
};

export default defineConfig({
  test: {
    testTimeout: 60_000,
    hookTimeout: 120_000,
    reporters: ["default", new RuleTable(), new LeftOutSuites(elsewhere)],
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          include: ["tests/**/*.test.ts"],
          exclude: [
            "tests/endurance/**",
            "tests/firmwares/**",
            "tests/oracle/**",
            "tests/server/built/**",
            "tests/package/**",
            "tests/editor/**",
          ],
        },
      },
      {
        extends: true,
        test: {
          name: "protocol",
          include: ["tests/server/built/**/*.test.ts"],
          globalSetup: "tests/server/built/fresh-build.ts",
        },
      },
      {
        extends: true,
        test: { name: "endurance", include: ["tests/endurance/**/*.test.ts"], testTimeout: 900_000 },
      },
      {
        extends: true,
        test: { name: "firmwares", include: ["tests/firmwares/**/*.test.ts"], testTimeout: 120_000 },
      },
      {
        extends: true,
        test: { name: "oracle", include: ["tests/oracle/**/*.test.ts"], testTimeout: 600_000 },
      },
      {
        extends: true,
        test: { name: "package", include: ["tests/package/**/*.test.ts"], testTimeout: 300_000 },
      },
      {
        extends: true,
        test: {
          name: "editor",
          include: ["tests/editor/**/*.test.ts"],
          globalSetup: "tests/editor/host/packaged-once.ts",
          testTimeout: 900_000,
          hookTimeout: 1_800_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
