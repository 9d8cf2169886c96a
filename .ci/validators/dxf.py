"""Reads files of the drawing interchange format and prints, as JSON, how many
entities of each kind each layer has, the box of each file's closed outlines, and
what the reader finds wrong."""

import collections
import json
import sys

import ezdxf
from ezdxf import path as paths

out = []
for path in sys.argv[1:]:
    drawing = ezdxf.readfile(path)
    audit = drawing.audit()
    counts = collections.Counter(e.dxftype() + " " + e.dxf.layer for e in drawing.modelspace())
    cut = [e for e in drawing.modelspace().query('POLYLINE[layer=="CUT"]')]
    points = [p for e in cut for p in paths.make_path(e).flattening(0.002)]
    out.append({
        "version": drawing.dxfversion,
        "layers": sorted(l.dxf.name for l in drawing.layers),
        "counts": counts,
        "closed": sum(e.is_closed for e in cut),
        "size": [max(p[i] for p in points) - min(p[i] for p in points) for i in (0, 1)],
        "texts": [e.dxf.text for e in drawing.modelspace().query("TEXT")],
        "errors": [e.message for e in audit.errors + audit.fixes],
    })
json.dump(out, sys.stdout)
