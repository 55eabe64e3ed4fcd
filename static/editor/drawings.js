// What can be drawn, by the kind that a button names.

import { Arch } from "./drawings/arch.js";
import { Box } from "./drawings/box.js";
import { Circle } from "./drawings/circle.js";
import { Corners } from "./drawings/corners.js";

const KINDS = { box: Box, arch: Arch, circle: Circle, polygon: Corners, line: Corners };

export function drawingOf(tools, asked) {
  return new KINDS[asked.kind](tools, asked);
}
