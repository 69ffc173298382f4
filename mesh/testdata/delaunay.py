"""Delaunay triangles of lists of points, as sorted lists of sorted numbers, by Qhull through
scipy.spatial (https://docs.scipy.org): JSON in, JSON out."""
import json
import sys

from scipy.spatial import Delaunay

json.dump([sorted(sorted(int(i) for i in t) for t in Delaunay(p).simplices) for p in json.load(sys.stdin)], sys.stdout)
