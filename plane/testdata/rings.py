"""Area, length and validity of rings given as points, and of queries whether they lie inside,
by shapely (https://shapely.readthedocs.io): JSON in, JSON out."""
import json
import sys

from shapely.geometry import Point, Polygon

answers = []
for ring in json.load(sys.stdin):
    polygon = Polygon(ring["points"])
    answers.append({
        "area": polygon.area,
        "length": polygon.length,
        "valid": polygon.is_valid,
        "ccw": polygon.exterior.is_ccw,
        "inside": [polygon.contains(Point(q)) for q in ring["queries"]],
        "distance": [polygon.exterior.distance(Point(q)) for q in ring["queries"]],
    })
json.dump(answers, sys.stdout)
