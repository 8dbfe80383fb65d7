# What is wrong at a field and what to do about it, what was assumed, what deserves a second look, and what the file said.

# A figure or a choice
empty = Nothing is written here yet.
not-a-number = Write a plain number, such as 12.5.
not-a-whole-number = Write a whole number.
ambiguous = This can be read in two ways. Write 1200 or 1.2, without a comma before three digits.
negative = It can’t be less than nothing.
zero = It can’t be nothing at all.
too-small = Less than { $limit } is not believed. Look at the figure and its unit again.
too-large = More than { $limit } is not believed. Look at the figure and its unit again.
count-too-large = More than { $limit } is not believed.
wrong-unit = This unit measures something else. Choose another.
unit-unknown = The unit { $unit } is not known here. Choose another.
choose-one = Choose one.
choose-at-least-one = Choose at least one.
choice-unknown = { $choice } is not known here. Choose again.
text-too-long = { $count } characters are too many: { $limit } will do.
not-a-date = There is no such day. Write it as 2026-03-28.
too-many = { $limit } are the most that can be kept here.

# The lawn
no-parts = Begin with one shape of grass.
first-part-taken-out = The first shape is the grass. Take beds and ponds out in the shapes after it.
triangle-side-too-long = { $side }: { $value } can’t be. The other two together are { $others }. Tape it again.
angle-too-small = The opening is at least { $limit }.
no-such-side = This shape has no such side.
side-twice = This side is listed twice.
place-needs-both = Write both: how far to the right, and how far away from the front. Or neither.
patch-outside = It lies outside the grass. Look at where it begins.
patch-does-not-fit = It does not fit on the grass. Look at its size and at where it begins.
nothing-left-to-treat = No grass is left to treat: patches and margins take it all.
patch-place-assumed = { $what }: it is drawn near the middle, because nobody said where it lies. The area is right; the strips may not be.
part-set-beside = Shape { $part } is set beside the others, because nobody said where it lies.
doubt-not-stated = The area is taken as it was taped, with no doubt.

# The label
needed-for-plant-protection = A plant protection product needs this by law. It stands on the label.
density-needed-for-dose-by-mass = A liquid dosed by weight needs the weight of a litre.
label-without-name = Write the name on the label.
label-without-purpose = Choose what the label allows it for.
label-without-dose = Write the label’s dose.
label-without-authorisation-number = Write the authorisation number on the label.
label-dose-kinds-differ = One dose goes by volume and the other by weight. Look at both units again.
label-dose-above-highest = The dose, { $dose }, is above the highest one, { $highest }. One of them is mistyped.
label-water-range-reversed = The most water is less than the least.
label-concentration-kind-differs = The dose goes by volume and this by weight, or the other way round. Look at both units again.
label-crystals-by-volume = Crystals are dosed by weight. Look at the unit again.
look-again-highest-far-above-dose = The highest dose is { $times } the dose.
look-again-water-range-wide = The most water is ten times the least, or more.
look-again-water-unusual = { $value } of water is unusual for work on foot.
look-again-dose-much-for-the-water = More than a quarter of the mixture would be product.
look-again-no-equipment-for-mixing = No protective equipment is written down for mixing.
look-again-no-margin-to-water = No margin to open water is written down.
look-again-kills-grass = A product that kills grass does not belong on a lawn.
look-again-date-in-future = { $date } is still to come.

# The kit and its calibration
dead-volume-fills-the-tank = It can’t be as much as the tank holds.
jug-or-scales-needed = Write the step of your jug or of your scales: product must be measured with one.
flow-not-believed = { $value } is no nozzle’s flow: { $least } to { $most } is believed. Look at what you caught and how long it took.
pace-not-believed = { $value } is nobody’s pace: { $least } to { $most } is believed. Look at how far you walked and how long it took.

# What the file or the program said
failure-refused = { $count ->
    [one] One field needs another look. Nothing is lost.
   *[other] { $count } fields need another look. Nothing is lost.
}
failure-barred = A check stands in the way. Nothing was changed.
failure-stale = The visit has gone on since this was drawn. Look at it again.
failure-already-answered = This was written down before. Look at it again.
failure-not-found = There is no such thing any more: { $what }.
thing-operator = operator
thing-client = client
thing-lawn = lawn
thing-product = product
thing-label = label
thing-kit = kit
thing-calibration = jug test and timed walk
thing-visit = visit
failure-malformed = The program asked for something that makes no sense. That is its fault, not yours; nothing was changed. ({ $reason })
failure-id-taken = The program used one name for two things. That is its fault, not yours; nothing was changed. ({ $id })
failure-unreadable = Something in the file can’t be read. Make a copy of the file before you go on. ({ $reason })
failure-newer = The file is from a newer version ({ $version }). It can be read. Update the program to write in it.
failure-no-room = No room is left on this device, so this step was not written down. Make room, then try again.
failure-cannot-write = The file can’t be written, so this step was not written down. Allow it, then try again. ({ $reason })
failure-damaged = The file is damaged. ({ $reason })
failure-busy = Another window or program holds the file. Close it, then try again.
failure-file-exists = { $path } is there already.
failure-file = The file refused, so this step was not written down. Try again. ({ $reason })
failure-open-no-room = No room is left on this device to open { $path }. Make room, then try again.
failure-open-cannot-write = { $path } can’t be written. Allow it, then try again. ({ $reason })
failure-open-damaged = { $path } is damaged. It was left as it is. ({ $reason })
failure-open-busy = Another window or program holds { $path }. Close it, then try again.
failure-open = { $path } does not open. Try again. ({ $reason })
