import { passesMatrix } from "./passes-matrix.ts";

passesMatrix("clock-interrupt-c", "every stroke");
