"""What ezdxf (https://ezdxf.mozman.at) reads from DXF files and what its audit finds: JSON in, JSON out."""
import io
import json
import sys

import ezdxf
answers = []
for text in json.load(sys.stdin):
    doc = ezdxf.read(io.StringIO(text, newline=None))
    audit = doc.audit()
    space = doc.modelspace()
    rings, courses = [], []
    for e in space.query("LWPOLYLINE POLYLINE"):
        if e.dxftype() == "POLYLINE" and e.is_3d_polyline:
            courses.append({"layer": e.dxf.layer, "closed": e.is_closed, "points": [list(v.dxf.location) for v in e.vertices]})
            continue
        if e.dxftype() == "LWPOLYLINE":
            closed, points = e.closed, [list(p) for p in e.get_points("xyb")]
        else:
            closed = e.is_closed
            points = [[v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0)] for v in e.vertices]
        rings.append({"layer": e.dxf.layer, "closed": closed, "points": points})
    answers.append({
        "version": doc.dxfversion,
        "units": doc.header.get("$INSUNITS", 0),
        "errors": [e.message for e in audit.errors],
        "fixes": [e.message for e in audit.fixes],
        "layers": {l.dxf.name: l.is_on() for l in doc.layers},
        "texts": [ezdxf.decode_dxf_unicode(e.dxf.text) for e in space.query("TEXT")],
        "rings": rings,
        "courses": courses,
        "spots": [list(e.dxf.location) for e in space.query("POINT")],
        "count": len(space),
    })
json.dump(answers, sys.stdout)
