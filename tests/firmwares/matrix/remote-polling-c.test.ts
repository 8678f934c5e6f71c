import { passesMatrix } from "./passes-matrix.ts";

passesMatrix("remote-polling-c", "strokes in turn");
