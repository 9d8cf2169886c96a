// Reads files of the drawing interchange format and prints, as JSON, how many
// entities of each kind each layer has.
import { readFileSync } from "node:fs";
import DxfParser from "dxf-parser";

const out = process.argv.slice(2).map((path) => {
  const drawing = new DxfParser().parseSync(readFileSync(path, "utf8"));
  const counts = {};
  let closed = 0;
  for (const e of drawing.entities) {
    const key = `${e.type} ${e.layer}`;
    counts[key] = (counts[key] ?? 0) + 1;
    if (e.type === "POLYLINE" && e.layer === "CUT" && e.shape) closed++;
  }
  return { version: drawing.header.$ACADVER, layers: Object.keys(drawing.tables.layer.layers).sort(), counts, closed };
});
process.stdout.write(JSON.stringify(out));
