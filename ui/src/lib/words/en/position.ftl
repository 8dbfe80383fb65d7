# What is said of positions: files brought in, rounds walked with the phone.

# Files
import-empty = There is nothing in this file.
import-too-large = This file is larger than { $limit } MB. Bring one with the lawn alone.
geojson-not-json = This file breaks off or is damaged at line { $line }, place { $column }. Save it again as GeoJSON.
geojson-not-geojson = This is no GeoJSON (RFC 7946). Save the outline as GeoJSON and bring that.
geojson-no-ground = This file holds no closed outline, only points or open lines. Draw the lawn as an area.
geojson-other-crs = This file is in another coordinate system ({ $name }). Save it in WGS 84, longitude and latitude in degrees.
geojson-not-degrees = These are no degrees: perhaps metres of a map grid. Save the file in WGS 84, longitude and latitude in degrees.
geojson-position-incomplete = A corner in this file has only one number. Save it again as GeoJSON.
geojson-looks-swapped = Latitude and longitude look swapped. GeoJSON has the longitude first. Save the file again that way round.
geojson-too-large = The shapes lie { $found } apart; a lawn reaches { $limit } at most. Bring one lawn alone.
geojson-too-many-corners = This file has { $found } corners; at most { $limit } are read. Bring one lawn alone, or a simpler outline.
geojson-too-many-pieces = This file has { $found } shapes; at most { $limit } are read. Bring one lawn alone.
geojson-ring-too-few-corners = Shape { $piece } has a ring with fewer than three different corners. Draw it as an area and save it again.
geojson-ring-crosses-itself = Shape { $piece } crosses itself: side { $first } meets side { $second }. Mend it where it was drawn.
geojson-ring-without-area = Shape { $piece } has a ring without any area.
geojson-hole-outside = Shape { $piece } has a hole that lies outside it. Mend it where it was drawn.
geojson-more-problems = And { $found } more like these.
geojson-lies-at = It lies at latitude { $latitude }, longitude { $longitude }. Is that where the lawn is?
geojson-rings-closed = Rings left open and closed for you: { $found }.
geojson-corners-doubled = Corners that stood twice and count once: { $found }.
geojson-holes-taken-out = Holes, which become taken-out parts: { $found }.
geojson-without-area = Points and open lines, which were left out: { $found }.
geojson-worked-out-left = Net area, margins and treated ground in the file, which are worked out anew: { $found }.
gpx-not-gpx = This is no GPX file. Save the walk as GPX and bring that.
gpx-no-positions = This file holds no positions.
gpx-too-many-positions = This file has more than { $limit } positions. Bring one walk alone.
gpx-too-many-tracks = This file has more than { $limit } tracks. Bring one walk alone.
gpx-broken-off = The file breaks off; what was recorded until then is here.
gpx-positions-unreadable = Positions that could not be read and were left out: { $found }.
gpx-accuracy-from-dilution = The file states a dilution, which is no length: { $metres } are taken for each unit of it.

# Positions
position-not-finite = This is no position.
position-latitude-beyond-pole = A latitude lies between -90 and 90 degrees.
position-longitude-beyond-half = A longitude lies between -180 and 180 degrees.

# The device's position
position-refused = The phone may not tell where it is. Allow the position for this app in the phone’s settings.
position-not-here = This device gives no position. Bring the walk as a GPX file instead.
position-not-found = No position was found. Go into the open, away from walls and trees, and wait a moment.
position-failed = The receiver had trouble: { $detail }. It goes on trying.

# A round walked with the phone
walk-too-many-fixes = This walk has { $found } fixes; at most { $limit } are used. Bring one round of one lawn.
walk-too-few-fixes = Only { $usable } fixes can be used and { $needed } are needed; { $dropped } were dropped. Walk it again under open sky.
walk-too-large = This walk reaches further than { $limit }. Bring the round of one lawn alone.
walk-not-closed = The walk ends { $gap } from where it began, of { $round } round. Walk on to where you began.
walk-crosses-itself = The walk crosses its own way about { $after } after the beginning. Walk the edge once round.
walk-without-area = The walk encloses no ground. Walk once round the edge.
walk-tape-instead = The area may be off by { $doubt }, more than { $limit }: the fixes are too unsure for this lawn. Tape it instead.
walk-again-to-compare = Fixes one after the other share their errors. Walk round a second time and compare.
walk-accuracy-not-stated = Not every fix says how sure it is: { $assumed } is taken for those.
walk-fixes-dropped = Fixes that did not fit and were left out: { $dropped }. Used: { $kept }.
walk-loops-cut = Small loops that jitter had tied, cut off: { $found }.
walk-gap-closed = The last { $gap } were closed by a straight side.
walk-rounds-agree = Both rounds agree: they are { $difference } apart, and as unsure as the fixes are, { $allowed } would be no surprise. The first round counts; the mean is { $mean }.
walk-rounds-differ = The rounds are { $difference } apart, more than the { $allowed } they may be. Walk it again or tape it.
