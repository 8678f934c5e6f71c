import { passesMatrix } from "./passes-matrix.ts";

passesMatrix("class-sketch", "every stroke");
