import { passesMatrix } from "./passes-matrix.ts";

passesMatrix("tiny-usi", "strokes in turn");
