import { passesMatrix } from "./passes-matrix.ts";

passesMatrix("busy-wait-c", "strokes in turn");
