# How a lawn is measured: the ways, what is asked in each, and drawing by hand. The trade's own sentences stand in trade.ftl.

## Ways
way-question = How will you measure?
way-shape = Length and width
way-shape-more = A rectangle, triangle or circle.
way-braces = Sides and braces
way-braces-more = Each side, and across from corner to corner.
way-offsets = Along a baseline
way-offsets-more = A line through it, and how far to each edge.
way-walked = Walk round it
way-walked-more = With the phone’s position.
way-corners = Draw it, or a file
way-corners-more = Drag the corners, or bring GeoJSON or GPX.
way-other = Measure it another way
instrument-question = What do you measure with?
instrument-tape = Tape
instrument-wheel = Wheel
instrument-paces = Paces
pace-length = One pace of yours
pace-length-hint = Walk 20 paces along a tape and divide.

## Sides and braces
braces-hint = Begin at the front left corner, A, and go round: along the front to B, and so on.
braces-corners = Corners
braces-n-corners = { $n ->
    [one] one corner
   *[other] { $n } corners
}
braces-side = Side { $from } to { $to }
braces-brace = Brace { $from } to { $to }
braces-line = { $from } to { $to }
braces-braces = Braces
braces-braces-hint = Sides alone can fold. Each brace across holds the shape; one more than needed checks them all.
braces-add-missing = Add the brace { $from } to { $to }: it is still missing
braces-add-other = Add a brace
braces-add = Add this brace
braces-from = From corner
braces-to = To corner
braces-remove = Remove the brace { $from } to { $to }
braces-blunder = Measure { $from } to { $to } again. You read { $taped }; all the others together make it { $others }.
braces-fit = How the lines fit together
braces-fit-hint = How much longer (+) or shorter (−) all of them together make each than it was read.
braces-fit-line = Line
braces-fit-taped = Read
braces-fit-off = Off by
braces-unchecked = no other line checks it

## Baseline
offsets-hint = Lay a line through the lawn, away from the front. At each place along it, measure square to the left and to the right edge, as seen walking along it. Empty means none on that side.
offsets-unit = Measured in
offsets-row = Place { $n }
offsets-chainage = Along
offsets-left = Left
offsets-right = Right
offsets-add = Add a place
offsets-remove = Remove place { $n }
offsets-trapezoid = Straight between the places: { $area }. The treatment is measured out by this.
offsets-simpson = With curved edges (Simpson), to compare: { $area }.

## Walked round
walked-hint = Stand on the edge, start, and walk once round along it at an easy pace. Keep the phone under the open sky.
walked-start = Start walking round
walked-stop = Stop: I am round
walked-go-on = Go on with this round
walked-second = Walk round a second time to compare
walked-anew = Throw this walk away
walked-n-fixes = { $n ->
    [0] Waiting for the first fix
    [one] One fix
   *[other] { $n } fixes
}
walked-accuracy = This one is good to { $accuracy }.
walked-waiting = The phone is looking for its position.
walked-file = Bring a GPX file
walked-kept = { $kept } fixes used, { $dropped } left out.

part-sd = { $area }, with a standard uncertainty of { $sd }. The ± of the whole lawn is twice that of its pieces together.

## By hand, and files
draw-hint = Begin with a rectangle about as large, then drag its corners. Or bring a file.
draw-width = About how wide
draw-length = About how long
draw-begin = Draw this rectangle
draw-no-rectangle = These lengths make no rectangle.
draw-corners = { $n ->
   *[other] Drag the { $n } corners
}
draw-anew = Begin anew
draw-take-hold = Take hold of a corner and drag it.
draw-corner = Corner { $name }
draw-undo = { $n ->
    [0] Nothing to undo
    [one] Undo (1)
   *[other] Undo ({ $n })
}
draw-snap = Snap to square
draw-add = Add a corner
draw-add-hint = Touch the side where the new corner shall be.
draw-add-on = Add a corner on the side { $from } to { $to }
draw-remove = Remove corner
draw-done = Done
file-bring = Bring a GeoJSON or GPX file
file-reading = Reading the file
give-out-heading = Give it out
give-out-hint = As GeoJSON, for other programs. Names of clients are not in it.
give-out-do = Make the file
give-out-save = Save { $name }

## Places
places-heading = Where things are
places-more = The way in and the tap: refills and the order of the strips go by them.
places-do = Mark them on the drawing
places-hint = { $thing }: touch the drawing where it is, or drag it.
places-which = What to place
places-entry = Way in
places-tap = Tap
places-piece = { $what } ({ $n })
places-set = Put it at a corner
places-clear = Take it off the drawing
places-has-entry = way in marked
places-has-tap = tap marked
part-place = Drag it on the drawing

## Slope and compass
lawn-slope = Does it slope?
slope-question = Slope
slope-hint = The product goes by the level area, the water by the ground you walk.
slope-level = Level
slope-gradient = I know the gradient
slope-rise = Rise over a taped length
slope-gradient-is = Gradient
slope-ground = Length along the ground, straight uphill
slope-rise-is = How much higher its end is
slope-uphill = Which way is uphill?
uphill-away = Away from the front
uphill-right = To the right
uphill-front = To the front
uphill-left = To the left
lawn-compass = Compass
lawn-bearing = Bearing away from the front
lawn-bearing-placed = The lawn’s place on the earth tells where north is: nothing needs to be typed.
lawn-bearing-hint = Stand at the front, look away from it and read the compass: north is 0, east 90. Then north is drawn.

## On the drawing
drawing-entry = Way in
drawing-tap = Tap
drawing-north = N
drawing-refill = before { $strip }
