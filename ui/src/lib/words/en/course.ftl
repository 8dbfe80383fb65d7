### What a visit says as it goes: fills, walk, corrections, using up, advice, what the next visit should know.

## Why something can't be done now
failure-not-now = The visit has moved on: it now stands at { $stage }. Look at the screen as it is now.
is-paused = You are paused. Carry on first.
nothing-to-undo = There is nothing to take back.
no-such-item = This item is not on the list any more. Look at the list as it is now.
not-one-of-these = Choose one of the answers shown.
passes-out-of-range = Between { $least } and { $most } passes.
plan-not-now = No plan can be made here: { $why }
reason-missing = Say why in a few words: it goes into the record.
name-missing = Type the name of the person who signs.
certificate-missing = Type the number of your certificate or licence.
force-out-of-range = The force goes from 0 to { $most }.
kit-not-calibrated = This kit was never calibrated: do the jug test and the timed walk first. Without them the water is a guess.
visit-has-a-gap = A step is missing in this visit (number { $at }). It can be read, not changed.
visit-has-unknown = This visit holds something that this version does not know ({ $kind }). It can be read, not changed.

## Lists
visit-open = { $date } · under way
visit-closed = { $date } · { $product }
visit-closed-part = { $date } · { $product } · part of the lawn
visit-closed-not-treated = { $date } · not treated
history-treated = Treated on { $date }
look-back-is-due = Look back: the last treatment's check was due on { $date }. What survived?
next-water-more = Next time: { $percent } more water. The product stays the same.
next-water-less = Next time: { $percent } less water. The product stays the same.
next-measure-the-lawn = Next time: measure the lawn again first. A new area moves the product too.
next-measure-the-kit = Next time: do the jug test and the timed walk again first.

## Story
story-target = Against or for: { $target }
story-product = Product: { $product }
story-kit = Nozzle: { $nozzle }
story-plan = Planned: { $area }, passes: { $passes }
story-pass = Pass { $pass }: used { $used }, planned { $planned }

## Plan
plan-water-trimmed-up = Last visit used more than planned: the water is trimmed up by { $percent }. The product is not.
plan-water-trimmed-down = Last visit used less than planned: the water is trimmed down by { $percent }. The product is not.
plan-room-unknown = How much room the product takes is not known: pour less water first, then make up to the mark.
plan-nozzle-between = No pace that can be walked brings the water into the label's range with this nozzle. With { $passes } { $passes ->
    [one] pass
   *[other] passes
  } at your pace it would have to give between { $least } and { $most }: change the nozzle or the pressure, and test it again.
plan-nozzle-at-least = No pace that can be walked brings enough water with this nozzle. With { $passes } { $passes ->
    [one] pass
   *[other] passes
  } at your pace it would have to give at least { $least }: change the nozzle or the pressure, and test it again.
plan-nozzle-at-most = No pace that can be walked keeps the water low enough with this nozzle. With { $passes } { $passes ->
    [one] pass
   *[other] passes
  } at your pace it may give at most { $most }: change the nozzle or the pressure, and test it again.
sum-treated = Area treated
sum-dose = Dose
sum-lower-area = Smaller area that counts at the highest dose
sum-product-exact = Product, exactly
sum-product-measured = Product to measure, in steps of the measure
sum-walked = Mixture that will be walked: flow × metres ÷ pace, all passes
sum-dead-volume = Stays in pump, hose and lance, once
sum-own-volume = Room that the product takes
sum-clean-water-in-tank = Clean water already in the tank
sum-clean-water = Clean water to pour
narrow-as-it-is = The last strip is { $width } wide. Walked like the others it would take { $factor } the dose: narrowing the fan does not cut the flow.
narrow-option-as-it-is = Walk it like the others.
narrow-option-some-passes = { $passes ->
    [one] Spray it on { $passes } pass only, at { $pace }, with the fan turned by { $turn }.
   *[other] Spray it on { $passes } passes only, at { $pace }, with the fan turned by { $turn }.
  }
narrow-option-even-out = Make all strips equally wide: { $water } of water, { $extra } more in all, the same product.
narrow-option-other-direction = Walk at right angles: { $water } of water in all.
narrow-option-leave = Leave it: { $left_out } stay untreated and take no product.

## Fills
fill-covers-pass = Pass { $pass }
fill-covers-passes = Passes { $first } to { $last }
fill-covers-part = Pass { $from_pass }, strip { $from_strip }, to pass { $to_pass }, strip { $to_strip }
fill-falls-first = Before the first strip
fill-falls-before-pass = Before pass { $pass }
fill-falls-before-strip = In pass { $pass }, before strip { $strip } of { $strips }
group-mixing = Mixing
group-washing = Washing
group-again = Look again
mix-over-dosed-behind = The first { $strips } strips of pass { $pass } have had { $dose }: more than the label's highest dose. Do not spray them again in this visit. Look first for the cause: pace, nozzle, pressure, a misread mark. If you cannot tell, stop for good. It goes into the record.
mix-more-water-than-planned = The fills still to be made get { $water } more water than planned. The product stays the same.
mix-less-water-than-planned = The fills still to be made get { $water } less water than planned. The product stays the same.

## Walk
strip-move-marker = At its end, move the marker { $distance } on: two swaths.
strip-move-marker-less = At its end, move the marker { $distance } on: less than two swaths, because of the narrow strip.
strip-has-gaps = This strip has { $runs } pieces: shut off in between.
strip-narrow = Narrow: { $width } wide. Turn the fan by { $turn } and walk at { $pace }.
pass-begin-here = Begin at the marker. It should stand on the side the wind blows towards.
pass-back-over-the-same = Back over the same strips, from where you ended.
pass-turn-square = Turn square: this pass goes across the last one.
pass-leaves-narrow-strip = Leave out the narrow strip ({ $width }) in this pass.
pass-narrow-strip = The narrow strip ({ $width }): turn the fan by { $turn } and walk it at { $pace }.
strip-stop-short = Where it ends at what must stay dry, stop your feet { $reach } short: the spray lands that far ahead of them.
pass-stop-short-by = Stop your feet { $reach } short of what must stay dry, hatched on the drawing: the spray lands that far ahead of them.
pass-stop-short = Stop short of what must stay dry: it is hatched on the drawing.

## After a pass
pass-used-more = This pass took more than planned.
pass-used-far-off = This is far from the plan. Look first: is the nozzle blocked (never blow through it), was the mark misread, a strip missed or walked twice? Take the reading back if it was wrong.
pass-used-less = This pass took less than planned.
correct-add-water-now = Add { $water } of clean water to the tank now. No product.
correct-add-water-now-and-later = Add { $now } of clean water to the tank now, and make the fills still to come with { $later } more water. No product.
correct-add-water-later = Make the fills still to come with { $water } more water in all. No more product.
correct-less-water = Make the fills still to come with { $water } less water in all. The same product.
correct-fewer-passes = End after pass { $passes }. The same product, in fewer passes.
correct-fewer-passes-more-water = End after pass { $passes }, with { $water } more clean water in all. The same product, in fewer passes.
correct-fewer-passes-less-water = End after pass { $passes }, and make the fills still to come with { $water } less water in all. The same product, in fewer passes.
correct-more-passes = Walk up to pass { $passes }. No more product.
correct-more-passes-more-water = Walk up to pass { $passes }, with { $water } more clean water in all. No more product.
correct-more-passes-less-water = Walk up to pass { $passes }, and make the fills still to come with { $water } less water in all. The same product.
correct-as-planned = Go on as planned.

## Using up
using-up-whole-pass = Add { $water } of clean water and walk the whole lawn once more, lightly.
using-up-part = Spray it on { $area } of the lawn where the dose still allows it, spread evenly.
using-up-keep = Keep it in a closed, labelled container for the next lawful use, or hand it in as the law says. Never pour it away.
using-up-nothing-left = Nothing to speak of is left.

## Closing
cause-used-more = The passes took { $percent } more than planned. Why?
cause-used-less = The passes took { $percent } less than planned. Why?
missing-client = No client is named on this lawn.
missing-certificate = The operator's certificate number is missing.
missing-authorisation-number = The label's authorisation number is missing.
advice-keep-off-hours = Keep people and animals off for { $hours }, and until it is dry.
advice-keep-off-until-dry = Keep people and animals off until it is dry.
advice-mowing = Mowing: { $words }
advice-no-watering = No watering for { $hours }.
advice-water-in = Water it in within { $hours } if it does not rain.
advice-iron-stains = Contains iron: it stains paving and shoes until it is watered in. Rinse splashes off paving at once.
advice-look-back = We look back on { $date }.

# What square ends do, and what the area's doubt does to the product
plan-ends-missed = Square ends miss { $area } in one pass.
plan-ends-overshot = Square ends wet { $area } beyond the edge in one pass, which takes { $water }.
plan-lower-area-counts = The area may be off by { $area } ({ $percent }). At the label’s highest dose only { $lower } counts.
plan-doubt-moves-product = The area may be off by { $area } ({ $percent }), and the product by { $product } with it.
angle-out-of-range = A walking direction lies between 0 and 180 degrees.
