import { passesWholeMatrix } from "./whole-matrix.ts";

passesWholeMatrix("clock-interrupt-c");
