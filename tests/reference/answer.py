"""Answers what GEOS (through shapely), GeographicLib and PsychroLib say, for tests that hold our sums against them.

Reads one JSON list of cases from standard input and writes one JSON list of answers, then ends. A case is an object
with the name of its question as `op`; a refused one is answered with `{"error": text}`.
Ground is a list of polygons `{"outer": [[x, y], ...], "holes": [[[x, y], ...], ...]}`, in metres.

- `area`: `of` -> `area`
- `union`, `difference`, `intersection`: `a`, `b`, perhaps `more` (a list of grounds as `b`) and our own result `ours` -> `area`, `ours` (its area) and `apart`, the
  area by which ours and theirs differ as ground
- `buffer`: `of` (ground) or `line`, `distance`, `join` (`round`, `mitre`, `bevel`), `quad_segs`, `mitre_limit` and `ours`
  -> `area`, `missing` (theirs without ours), `excess` (ours without theirs)
- `margins`: `of`, `lines` (each `{"line", "distance"}`) and `ours` -> as `buffer`, of all lines' buffers on that ground
- `cut`: `of` and `by` (a list of grounds) -> `areas`, one for each piece of `by`
- `timed_cut`: lists `of` and `by` of the same length, `n_times` -> `seconds` of the quickest round over all of them
- `geodesic`: `lat_lon` (a ring) -> `area` (positive anticlockwise) and `perimeter` of GeographicLib in Python, and
  `area_in_c` of GeographicLib in C, as PROJ carries it
- `adjust`: `corners` to start from and `lines` (each `[from, to, length, sd]`) -> `area`, `area_sd`, `residuals` and
  `standardised` of the least squares adjustment that leaves every corner free, by numpy's own solvers
- `air`: `points` (each `[degrees Celsius, relative humidity in per cent, metres above the sea]`) -> `wet_bulb`,
  `dew_point` and `pressure_pa`, each a list in the same order, by PsychroLib
"""

import json
import sys
import time

import numpy
import psychrolib
import shapely
from geographiclib.geodesic import Geodesic
from pyproj import Geod
from shapely.geometry import LineString, MultiPolygon, Polygon


def ground(polygons):
    """Ground as it was given. A corner may come to lie on another side but for rounding, which is mended; refused where
    mending would change the ground."""
    made = MultiPolygon([Polygon(polygon["outer"], polygon["holes"]) for polygon in polygons])
    if made.is_valid:
        return made
    mended = shapely.make_valid(made)
    if abs(mended.area - made.area) > 1e-12 * made.area:
        raise ValueError(shapely.is_valid_reason(made))
    return mended


def our_ground(case):
    """Our result, piece by piece: it may touch itself in a point, which GEOS calls invalid."""
    return shapely.union_all([ground([polygon]) for polygon in case["ours"]])


def area(case):
    return {"area": ground(case["of"]).area}


def boolean(operation):
    def answer(case):
        theirs = operation(ground(case["a"]), ground(case["b"]))
        for more in case.get("more", []):
            theirs = operation(theirs, ground(more))
        ours = our_ground(case)
        return {"area": theirs.area, "ours": ours.area, "apart": theirs.symmetric_difference(ours).area}

    return answer


def buffer(case):
    of = LineString(case["line"]) if "line" in case else ground(case["of"])
    theirs = of.buffer(
        case["distance"],
        quad_segs=case.get("quad_segs", 256),
        join_style=case.get("join", "round"),
        mitre_limit=case.get("mitre_limit", 5.0),
    )
    ours = our_ground(case)
    return {"area": theirs.area, "missing": theirs.difference(ours).area, "excess": ours.difference(theirs).area}


def margins(case):
    buffers = [
        LineString(side["line"]).buffer(side["distance"], quad_segs=case["quad_segs"]) for side in case["lines"]
    ]
    theirs = shapely.union_all(buffers).intersection(ground(case["of"]))
    ours = our_ground(case)
    return {"area": theirs.area, "missing": theirs.difference(ours).area, "excess": ours.difference(theirs).area}


def cut(case):
    of = ground(case["of"])
    shapely.prepare(of)
    return {"areas": [of.intersection(ground(piece)).area for piece in case["by"]]}


def timed_cut(case):
    pairs = [(ground(of), [ground(piece) for piece in by]) for of, by in zip(case["of"], case["by"], strict=True)]
    quickest = float("inf")
    for _ in range(case["n_times"]):
        started_at = time.perf_counter()
        for of, by in pairs:
            shapely.intersection(of, by)
        quickest = min(quickest, time.perf_counter() - started_at)
    return {"seconds": quickest}


def geodesic(case):
    polygon = Geodesic.WGS84.Polygon()
    for lat, lon in case["lat_lon"]:
        polygon.AddPoint(lat, lon)
    _, perimeter, signed_area = polygon.Compute(False, True)
    lats, lons = zip(*case["lat_lon"], strict=True)
    area_in_c, _ = Geod(ellps="WGS84").polygon_area_perimeter(lons, lats)
    return {"area": signed_area, "area_in_c": area_in_c, "perimeter": perimeter}


def adjust(case):
    """Gauss and Newton's steps of least length, so that no corner is held: another datum than the one under test."""
    corners = numpy.array(case["corners"])
    starts, ends, lengths, sds = (numpy.array(column) for column in zip(*case["lines"], strict=True))
    rows = numpy.arange(len(lengths))
    for _ in range(100):
        ways = corners[ends] - corners[starts]
        found = numpy.hypot(ways[:, 0], ways[:, 1])
        design = numpy.zeros((len(lengths), len(corners), 2))
        design[rows, starts] = -ways / (found * sds)[:, None]
        design[rows, ends] = ways / (found * sds)[:, None]
        design = design.reshape(len(lengths), -1)
        step = numpy.linalg.lstsq(design, (lengths - found) / sds, rcond=1e-10)[0]
        corners = corners + step.reshape(-1, 2)
        if numpy.abs(step).max() < 1e-12:
            break
    cofactors = numpy.linalg.pinv(design.T @ design, rcond=1e-10)
    before, after = numpy.roll(corners, 1, axis=0), numpy.roll(corners, -1, axis=0)
    of_area = numpy.column_stack([after[:, 1] - before[:, 1], before[:, 0] - after[:, 0]]).ravel() / 2
    shares = 1 - numpy.einsum("ij,jk,ik->i", design, cofactors, design)
    residuals = found - lengths
    return {
        "area": Polygon(corners).area,
        "area_sd": float(numpy.sqrt(of_area @ cofactors @ of_area)),
        "residuals": residuals.tolist(),
        "standardised": (residuals / sds / numpy.sqrt(numpy.maximum(shares, 1e-30))).tolist(),
    }


def air(case):
    psychrolib.SetUnitSystem(psychrolib.SI)
    pressures = [psychrolib.GetStandardAtmPressure(altitude_m) for _, _, altitude_m in case["points"]]
    pairs = list(zip(case["points"], pressures, strict=True))
    return {
        "wet_bulb": [psychrolib.GetTWetBulbFromRelHum(dry, humid / 100, pa) for (dry, humid, _), pa in pairs],
        "dew_point": [psychrolib.GetTDewPointFromRelHum(dry, humid / 100) for (dry, humid, _), _ in pairs],
        "pressure_pa": pressures,
    }


OPERATIONS = {
    "area": area,
    "union": boolean(shapely.union),
    "difference": boolean(shapely.difference),
    "intersection": boolean(shapely.intersection),
    "buffer": buffer,
    "margins": margins,
    "cut": cut,
    "timed_cut": timed_cut,
    "geodesic": geodesic,
    "adjust": adjust,
    "air": air,
}


def answer(case):
    try:
        return OPERATIONS[case["op"]](case)
    except (ValueError, shapely.errors.ShapelyError) as why:
        return {"error": str(why)}


def main():
    json.dump([answer(case) for case in json.load(sys.stdin)], sys.stdout)


main()
