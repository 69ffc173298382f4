"""Area, length and number of the rings at a distance from rings of straights, by shapely
(https://shapely.readthedocs.io): JSON in, JSON out. Round ones are built as the union of a buffer
about each side, since a whole ring buffered at once is not always right (GEOS 3.11 puts pieces of
some rings half a metre too far out); mitred ones by the buffer of the ring."""
import json
import sys

from shapely.geometry import LineString, Polygon
from shapely.ops import unary_union


def parallel(ask):
    ring, d = Polygon(ask["points"]), ask["d"]
    if ask["mitred"]:
        return ring.buffer(d, join_style=2, mitre_limit=1000)
    points = ask["points"]
    near = unary_union([
        LineString([points[i - 1], points[i]]).buffer(abs(d), resolution=ask["quarter"])
        for i in range(len(points))
    ])
    return ring.union(near) if d > 0 else ring.difference(near)


answers = []
for ask in json.load(sys.stdin):
    grown = parallel(ask)
    parts = [p for p in getattr(grown, "geoms", [grown]) if not p.is_empty]
    answers.append({
        "area": grown.area,
        "length": grown.length,
        "rings": sum(1 + len(p.interiors) for p in parts),
    })
json.dump(answers, sys.stdout)
