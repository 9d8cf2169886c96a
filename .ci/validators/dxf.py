"""Reads files of the drawing interchange format and prints, as JSON, how many
entities of each kind each layer has, the box of each file's closed outlines, and
what the reader finds wrong."""

import collections
import json
import sys

import ezdxf
from ezdxf import bbox

out = []
for path in sys.argv[1:]:
    drawing = ezdxf.readfile(path)
    audit = drawing.audit()
    counts = collections.Counter(e.dxftype() + " " + e.dxf.layer for e in drawing.modelspace())
    cut = [e for e in drawing.modelspace().query('POLYLINE[layer=="CUT"]')]
    box = bbox.extents(cut, flatten=0.0001)
    out.append({
        "version": drawing.dxfversion,
        "layers": sorted(l.dxf.name for l in drawing.layers),
        "counts": counts,
        "closed": sum(e.is_closed for e in cut),
        "size": list(box.size)[:2] if box.has_data else [],
        "texts": [e.dxf.text for e in drawing.modelspace().query("TEXT")],
        "errors": [e.message for e in audit.errors + audit.fixes],
    })
json.dump(out, sys.stdout)
