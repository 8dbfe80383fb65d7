"""Unpacks real outlines and tracks out of the downloaded packages, once, into plain files that the tests read.

Run by the set-up as `prepare.py DOWNLOADS FOLDER`. Leaves in FOLDER: `gpx/gpxpy/*.gpx`, and `outlines.json` with

- `plots`: the 407 plots of momepy's `bubenec.gpkg`. They are stored in Web Mercator, where an area is some 2.4 times
  too large, so each is brought into a transverse Mercator plane about its own middle, in metres, with its corners'
  latitudes and longitudes on WGS84 beside it;
- `buildings`: layer `os` of momepy's `tests.gpkg`, in metres of its own plane, moved to its own corner.

An outline is `{"name", "rings": [outer, hole, ...], "lat_lon": [outer, hole, ...]}`; rings are not closed.
A GeoPackage is an SQLite file; its geometries are WKB behind a header (OGC 12-128r19, clause 2.1.3).
"""

import json
import sqlite3
import sys
import tarfile
import zipfile
from pathlib import Path

import shapely
from pyproj import Transformer

# Bytes of the envelope by the indicator in the flags of the header.
ENVELOPE_BYTES = (0, 32, 48, 48, 64)


def wkb_of(blob):
    """The WKB behind a GeoPackage header."""
    if blob[:2] != b"GP":
        raise ValueError("this is no GeoPackage geometry")
    return blob[8 + ENVELOPE_BYTES[(blob[3] >> 1) & 7] :]


def polygons_of(file, layer):
    """The polygons of a layer in the order of their ids."""
    with sqlite3.connect(file) as connection:
        rows = connection.execute(f'SELECT fid, geom FROM "{layer}" ORDER BY fid').fetchall()
    for fid, blob in rows:
        polygon = shapely.from_wkb(wkb_of(blob))
        if polygon.geom_type != "Polygon" or not polygon.is_valid:
            raise ValueError(f"{layer} {fid} is no valid polygon")
        yield f"{layer} {fid}", polygon


def open_rings(polygon):
    """Outer ring and holes, the closing point left away."""
    return [[(x, y) for x, y, *_ in ring.coords[:-1]] for ring in (polygon.exterior, *polygon.interiors)]


def plot(name, polygon, to_globe):
    """One plot in a plane about its own middle."""
    lon_lat = [[to_globe.transform(x, y) for x, y in ring] for ring in open_rings(polygon)]
    lons, lats = zip(*lon_lat[0])
    middle = ((min(lons) + max(lons)) / 2, (min(lats) + max(lats)) / 2)
    plane = f"+proj=tmerc +lon_0={middle[0]!r} +lat_0={middle[1]!r} +ellps=WGS84 +units=m"
    to_plane = Transformer.from_crs("EPSG:4326", plane, always_xy=True)
    return {
        "name": name,
        "rings": [[to_plane.transform(lon, lat) for lon, lat in ring] for ring in lon_lat],
        "lat_lon": [[(lat, lon) for lon, lat in ring] for ring in lon_lat],
    }


def building(name, polygon):
    """One building, moved to its own corner."""
    x_least, y_least, _, _ = polygon.bounds
    rings = [[(x - x_least, y - y_least) for x, y in ring] for ring in open_rings(polygon)]
    return {"name": name, "rings": rings, "lat_lon": []}


def main():
    downloads, folder = map(Path, sys.argv[1:3])
    datasets = "momepy/datasets"
    with zipfile.ZipFile(next(downloads.glob("momepy-*.whl"))) as wheel:
        for name in ("bubenec.gpkg", "tests.gpkg"):
            (downloads / name).write_bytes(wheel.read(f"{datasets}/{name}"))
    tracks = folder / "gpx/gpxpy"
    tracks.mkdir(parents=True, exist_ok=True)
    with tarfile.open(next(downloads.glob("gpxpy-*.tar.gz"))) as package:
        for member in package.getmembers():
            if "/test_files/" in member.name and member.isfile():
                (tracks / Path(member.name).name).write_bytes(package.extractfile(member).read())
    to_globe = Transformer.from_crs("EPSG:3857", "EPSG:4326", always_xy=True)
    outlines = {
        "plots": [plot(name, polygon, to_globe) for name, polygon in polygons_of(downloads / "bubenec.gpkg", "plots")],
        "buildings": [building(name, polygon) for name, polygon in polygons_of(downloads / "tests.gpkg", "os")],
    }
    (folder / "outlines.json").write_text(json.dumps(outlines))


main()
