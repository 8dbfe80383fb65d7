# What the trade and the use cases say outside the checks: fields, failures, things to tick, steps taken.

# At a field
empty = Fill this in.
not-a-number = This is no number. Type digits, such as 2.5.
not-a-whole-number = Type a whole number.
ambiguous = This can be read in two ways. Type it without a sign between the thousands, such as 1200.
negative = This cannot be below zero.
zero = This cannot be zero.
too-small = This is too small to be right: it should be at least { $limit }.
too-large = This is too large to be right: it should be at most { $limit }.
count-too-large = This is too many to be right: it should be at most { $limit }.
too-many = These are too many: at most { $limit }.
wrong-unit = This unit does not fit here. Choose another.
unit-unknown = This unit is not known ({ $unit }). Choose another.
choose-one = Choose one.
choose-at-least-one = Choose at least one.
choice-unknown = This choice is not known ({ $choice }). Choose another.
text-too-long = This is too long: { $count } characters, at most { $limit }.
not-a-date = This is no day. Type it as year, month, day.

# Lawns
a = the side along the front
b = the right-hand side
c = the left-hand side
triangle-side-too-long = No such triangle: { $side } is { $value }, the other two together only { $others }. Measure again.
angle-too-small = This opening is too small: at least { $limit }.
no-parts = A lawn needs at least one shape.
first-part-taken-out = The first shape must be grass.
no-such-side = There is no such side.
side-twice = This side was said twice.
patch-does-not-fit = This does not fit inside the grass. Make it smaller or say where it lies.
patch-larger-than-lawn = This is larger than the grass itself. Check its size, and where it lies.
patch-outside = This lies outside the grass. Change where it lies.
patch-partly-outside = { $what }: a part of it lies outside the grass; only what lies on the grass is taken out.
patches-overlap = { $one } and { $other } lie on each other. Their common ground is taken out once.
place-needed = Say how far to the right and how far away this begins.
place-too-far = This place is no place on a lawn.
corners-none = There are no corners yet. Draw it, or bring a file.
corner-unknown = There is no such corner.
part-no-surer = Corners moved by hand make its area no surer than it was measured before.
outline-turned-over = There the outline would be turned over. Keep the corner on its own side.
file-among-unplaced = The other pieces and places of this lawn were placed by hand, and nobody knows where on the earth that is, so this file cannot be laid beside them. Bring it in for a lawn of its own, or take their places out first.
file-before-bearing = Put the bearing right first: the file is laid by it.
corner-of-no-ring = A round shape has no corners to move. Draw it by its corners instead.
walked-nothing = Nobody has walked round this yet.
part-now-by-corners = This is measured by its corners now. What was typed before is kept: choose the old way to have it back.
side-between = { $from } to { $to }
lawn-without-origin = Nobody knows where on the earth this lawn lies. Walk round it once, or bring it from a file.
gpx-more-tracks = Other tracks in this file, left out: { $found }.
place-needs-both = Say both how far to the right and how far away, or neither.
nothing-left-to-treat = Nothing is left of the grass. Make the beds or margins smaller.
corner-twice = Corner { $corner } and the next are the same. Take one of them out.
slope-too-steep = This is too steep to spray on foot: at most { $limit }. Check the figures.
rise-longer-than-ground = The rise cannot reach the length along the ground, { $ground }. Measure both again.
brace-missing = These lengths do not hold the corners still. Tape { $from }–{ $to } too.
braces-fit-nothing = No outline comes near these lengths. Measure them again.
braces-cross = With these lengths side { $one } meets side { $other }. Check the lengths and the order of the corners.
no-such-corner = There is no such corner.
line-to-itself = A length runs between two different corners.
line-longer-than-way-round = { $from }–{ $to } cannot be { $value }: the way { $way } is only { $round }. Measure both again.
lengths-close = All lengths fit within { $worst } ({ $from }–{ $to } fits worst).
lengths-unchecked = No length checks another yet.
line-likely-wrong = { $from }–{ $to } is most likely wrong: taped { $value }, by the others { $others }. Tape it again.
one-of-these-wrong = One of these is most likely wrong: { $among }. Tape them again, or { $from }–{ $to } too.
one-of-these-wrong-all-taped = One of these is most likely wrong: { $among }. Tape them again.
lengths-disagree = The lengths do not fit together, and cannot show which is wrong. Tape { $from }–{ $to } too, or all again.
lengths-disagree-all-taped = The lengths do not fit together, and cannot show which is wrong. Tape them again.
doubt-from-residuals = The lengths fit worse than they should, so the area’s doubt is made wider.
outline-not-settled = Two outlines fit these lengths, and the likelier is drawn. Tape { $from }–{ $to } to be sure.
corner-held-weakly = Corner { $corner } may be { $off } off. Tape { $from }–{ $to } to hold it.
nothing-checks = Nothing checks these lengths. Tape { $from }–{ $to } too, and a mistake will show.
nothing-checks-all-taped = Nothing checks these lengths. Tape one of them again.
offsets-too-few = A baseline needs at least two places along it.
chainage-not-rising = The places follow one another along the line: this one should lie beyond { $limit }.
offset-without-width = At { $at } the lawn has no width. Measure it as two parts, or check the offsets.
simpson-needs-equal-spaces = Simpson’s rule needs equal spaces between the stations.
simpson-needs-odd-stations = Simpson’s rule needs an odd number of stations.
area-too-uncertain = The area may be off by { $doubt }, where at most { $limit } can be dosed by. Measure it with a tape, or tape more lengths.
outline-not-finite = The shape cannot be drawn. Check the lengths.
outline-too-few-corners = The shape has too few corners. Check the lengths.
outline-crosses-itself = The outline crosses itself. Check the lengths, or drag the corner back.
outline-without-area = The outline holds no grass. Check the lengths.
patch-place-assumed = { $what }: nobody said where it lies, so it is drawn in the middle.
part-set-beside = Nobody said where shape { $part } lies: it is drawn beside the first.
client-unknown = This client is not kept here. Choose again.
doubt-not-stated = Nobody said how far the area may be off: it is taken as it is.
doubt-of-part-unknown = Nobody knows how far off these shapes may be, and they count as exact: { $parts }. The ± is that of the others. If you know how far off the whole area may be, type it.

# Kits and calibrations
dead-volume-fills-the-tank = It cannot be as much as the tank holds.
jug-or-scales-needed = Say the smallest step of your jug or of your scales.
flow-not-believed = This makes { $value }, which no such nozzle gives (from { $least } to { $most }). Check the jug and the watch.
pace-not-believed = This makes { $value }, which nobody walks (from { $least } to { $most }). Check the length and the watch.

# Labels
needed-for-plant-protection = A plant protection product’s label states this. Copy it.
density-needed-for-dose-by-mass = The dose is by weight: say what a litre weighs.
label-without-name = The label has no name yet.
label-without-purpose = Choose what the label allows it for.
label-without-dose = The label has no dose yet.
label-without-authorisation-number = A plant protection product has an authorisation number. Copy it.
label-dose-kinds-differ = One dose is by weight and the other by volume. Copy both in the same way.
label-dose-above-highest = The dose, { $dose }, is above the highest, { $highest }. Look at the label again.
label-water-range-reversed = The most water is less than the least. Look at the label again.
label-concentration-kind-differs = The dose is by weight and the concentration by volume, or the other way round. Copy both in the same way.
label-crystals-by-volume = Crystals and powders are dosed by weight.
look-again-highest-far-above-dose = The highest dose is { $times } the dose. Is it this on the label?
look-again-water-range-wide = The water range is very wide. Is it this on the label?
look-again-water-unusual = So much water, { $value }, is unusual for a knapsack sprayer. Is it this on the label?
look-again-dose-much-for-the-water = That is much product for so little water. Is it this on the label?
look-again-no-equipment-for-mixing = No protective equipment for handling the product was copied. Does the label really ask for none?
look-again-no-margin-to-water = No margin to open water was copied. Does the label really state none?
look-again-kills-grass = It kills grass: it may not go on a lawn.
look-again-date-in-future = The day { $date } lies in the future.

# Planning
tank-too-small-for-a-strip = The tank does not hold enough for one strip. Walk faster, or take a larger tank.
too-many-fills = That makes too many fills. Take a larger tank.
too-many-strips = That makes too many strips. Check the swath.
nothing-to-spray = There is nothing to spray. Check the dose and the water.
number-of-passes = Between one and { $limit } passes.
headings-and-passes-differ = Every pass needs a direction.
no-dose = The dose must be above zero.
measure-kind-differs = The product is measured by weight and the kit has no scales, or the other way round. Add them to the kit.
trim-not-believed = The water learned last time, { $value }, cannot be right. Test the kit again.
both-headings-turned = The narrow strip cannot be given to the other direction in both directions.
no-such-number-of-passes = The narrow strip cannot be sprayed on { $passes } passes.

# Failures
failure-refused = { $count ->
    [0] This cannot be kept like this.
    [one] One thing must be put right first.
   *[other] { $count } things must be put right first.
}
failure-barred = This stands in the way:
failure-not-found = There is no such { $what }.
thing-visit = visit
thing-lawn = lawn
thing-client = client
thing-product = label
thing-kit = kit
thing-calibration = measurement
thing-operator = operator
thing-label = label
failure-stale = This had moved on meanwhile. Look at it as it stands now.
failure-already-answered = This was done before.
failure-malformed = The app asked something that makes no sense. Please report this: { $reason }
failure-unreadable = Something in the notebook cannot be read: { $reason }
failure-newer = This notebook was written by a newer version ({ $version }). It can be read here, not written. Update the app.
file-some-unreadable = { $count ->
    [one] One lawn cannot be read, and is not shown. Copy the notebook’s file before you go on.
   *[other] { $count } lawns cannot be read, and are not shown. Copy the notebook’s file before you go on.
}
failure-no-room = The device is full. Make room, then try again. Nothing that was written down is lost.
failure-cannot-write = The notebook cannot be written: { $reason }
failure-damaged = The notebook is damaged: { $reason }
failure-busy = Another program holds the notebook. Close it, then try again.
failure-id-taken = The same entry is already kept with other content ({ $id }).
failure-file-exists = There is already a file at { $path }.
failure-file = The notebook’s file failed: { $reason }
failure-replaced = The notebook’s file was replaced, moved or deleted while the app had it open, so nothing more is written. All that was kept is in { $path }. Close the app, put that copy in the notebook’s place if it is the one you want, and start again.
failure-replaced-uncopied = The notebook’s file was replaced, moved or deleted while the app had it open, and what was kept could not be copied ({ $reason }). Do not close the app: write down what it shows, and put the file back.
failure-open-no-room = The device is full, so the notebook at { $path } cannot be opened. Make room, then try again.
failure-open-cannot-write = The notebook at { $path } cannot be written ({ $reason }). Give the app the right to write there, then try again.
failure-open-damaged = The notebook at { $path } is damaged ({ $reason }).
failure-open-busy = Another program holds the notebook at { $path }. Close it, then try again.
failure-open = The notebook at { $path } cannot be opened: { $reason }

# Ready list
group-protective = Put on
group-sprayer = The sprayer
group-site = The site
ready-gloves = Gloves are on.
ready-coverall = The coverall is on.
ready-boots = Rubber boots are on.
ready-face-shield = The face shield is on.
ready-glasses = Safety glasses are on.
ready-apron = The apron is on.
ready-respirator = The mask is on, its filter in date.
ready-nozzle-sound = The nozzle is sound and clean.
ready-hoses-sound = Hoses, straps and lid are sound and tight.
ready-sprayer-clean = The sprayer is clean of what was last in it.
ready-emergency-water = Clean water for eyes and skin stands ready.
ready-label-at-hand = The label is at hand.
ready-phone-charged = The phone is charged.
ready-clean-water-trial = The kit was tried with clean water.
ready-people-away = People are away from the lawn.
ready-pets-away = Pets are away, bowls and toys are in.
ready-drains-covered = Drains are covered.
ready-water-kept-clear = Ponds and ditches are known and kept clear.
ready-hives-looked-for = Hives were looked for, and no flowers in the grass are visited by bees.
ready-food-plants-covered = Food plants are covered or far enough.
ready-washing-in = The washing is in.
ready-windows-shut = Windows are shut.
ready-neighbours-told = Neighbours are told.
ready-lawn-cleared = The lawn is cleared: no toys, stones or leaves.
again-wind-is-as-seen = The wind is as it was written down.
again-rain-has-stopped = The rain has stopped.
again-grass-is-dry = The grass is dry again.
again-gloves-back-on = The gloves are back on.

# Mixing and washing
mix-protective-on = Put on what the label asks for when handling the product.
mix-half-water = Fill in half the water. Never hang the hose into the tank.
mix-measure-liquid = Measure the product in the jug, at eye level.
mix-weigh = Weigh the product.
mix-dissolve-and-strain = Dissolve it in a bucket of water and strain it.
mix-make-paste = Stir it to a paste with a little water.
mix-pour-product = Pour it into the tank.
mix-rinse-measure = Rinse the measure three times into the tank; an emptied container too.
mix-make-up = Make it up to the mark.
mix-close = Close the lid and wipe the outside.
mix-agitate = Shake it until it is even.
wash-rinse-tank = Rinse the tank three times with a little clean water.
wash-spray-rinsings = Spray the rinsings onto the treated lawn, evenly.
wash-nozzle-and-strainer = Wash nozzle and strainer. Never blow through them.
wash-outside = Wash the outside of the sprayer and the lance.
wash-containers = Empty containers are rinsed three times and kept for handing in.
wash-boots = Wash the boots before you leave the lawn.
wash-phone-and-clicker = Wipe the phone and the clicker.
wash-gloves-then-hands = Wash the gloves, take them off, then wash hands and face.
wash-product-locked-away = The product is locked away.

# What a visit waits for, and what it refuses
weather-not-seen = Write down the weather.
refill-comes-first = The tank must be refilled first.
no-fill-left = No fill is left.
refill-after-this-pass = The refill comes after this pass.
strips-done-out-of-range = Between { $least } and { $most } strips can be done.
no-such-way = This way is not open here.
cause-missing = Say why the use differed.
look-back-is-owed = Say what is left of the last treatment.
less-than-was-left = That is less than was left in the tank before.
wrong-kind-of-amount = The product is measured by weight here, or the other way round. Use the unit offered.
more-than-the-tank-had = That is more than there was: at most { $limit }.

# Terms of a sum
term-passes-left-at-real-use = The passes left, at what was really used
term-left-in-tank = Left in the tank
term-fills-not-yet-made = Fills not yet made
term-water-to-add = Water to add

# Steps that can be taken back
step-opened = The visit was opened
step-assessed = The lawn was looked at
step-product-chosen = The product was chosen
step-kit-chosen = The kit was chosen
step-plan-agreed = The plan was agreed
step-ready-ticked = Ticked on the ready list
step-weather-seen = The weather was written down
step-advisory-passed = A stop was passed with a reason
step-mixing-begun = Mixing was begun
step-mix-ticked = A mixing step
step-fill-made = Fill { $fill } was made
step-strip-done = Strip { $strip } of pass { $pass } was done
step-pass-done = Pass { $pass } was done
step-refill-called = A refill was called in pass { $pass }
step-ran-short = It ran short
step-paused = Paused
step-resumed = Carried on
step-tank-measured = What was left after pass { $pass }
step-corrected = It was put right after pass { $pass }
step-used-up = What was left was used up
step-wash-ticked = A washing step
step-washed = Washing was done
step-stopped = Stopped for good
step-closed = Signed and closed
step-undone = Taken back

# Stages
stage-assess = Look
stage-choose = Product
stage-kit = Kit
stage-plan = Plan
stage-ready = Ready list
stage-mix = Mix
stage-walk = Walk
stage-pass-end = What is left
stage-correct = Put it right
stage-use-up = Use up
stage-wash = Wash
stage-close = Sign
stage-closed = Closed

# Directions set side by side
direction-quickest = The quickest of them.
direction-without-narrow-strip = A little slower than another, but without a narrow strip.
direction-fewest-wedges = A little slower than another, but less is missed or wetted at slanting ends.
direction-with-narrow-strip = It leaves a narrow strip of { $width }.
direction-more-wedges = { $area } more are missed or wetted at slanting ends.
direction-slower = It takes { $minutes } longer.
direction-as-good = Nearly as good.
plan-stop-short = The spray lands { $reach } ahead of your feet: close the lance when you are that far from the end of a run.
start-as-chosen = The side that was chosen.
start-downwind = The start lies on the side the wind blows towards, so that the work goes upwind.
start-upwind = The wind blows towards the other side: start there, and work upwind.
start-wind-unknown = The wind is not known yet: begin at the side the wind blows towards, and work upwind.
