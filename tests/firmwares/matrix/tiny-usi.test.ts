import { passesWholeMatrix } from "./whole-matrix.ts";

passesWholeMatrix("tiny-usi");
