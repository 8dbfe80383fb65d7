# Words of a visit's panels. Sentences that the core says stand in trade.ftl, checks.ftl and record.ftl.
visit-heading = Visit
visit-back = Lawns
visit-so-far = So far
visit-was-stale = This had moved on. It is drawn again as it stands now.
trail-done = done
trail-now = now
trail-later = later
undo-list = { $n ->
    [one] Take back: one step
   *[other] Take back: { $n } steps
}
undo-hint = The last step first.
undo-do = Take back
stop-for-good = Stop this visit for good
stop-for-good-hint = What was done stands in a part record. This visit cannot be carried on afterwards.
stop-why = Why?
stop-reason-weather = Weather
stop-reason-equipment = Equipment
stop-reason-client = The client
stop-reason-health = Health
stop-reason-other = Something else
stop-note = More words, if any
stop-do = Stop for good

verdict-go = Go
verdict-caution = Caution
verdict-stop = Stop
verdict-passed = Passed
check-found = Found: { $value }.
check-limit = Limit: { $limit }.
check-source = { $source }, { $tag }.
check-pass = Go on with a reason
check-pass-reason = Why? It goes into the record.
check-pass-do = Pass this with the reason
check-passed-because = Passed: { $reason }
check-going = { $n ->
    [one] One thing says Go
   *[other] { $n } things say Go
}

assess-heading = Is a treatment right?
assess-target = What is there, or what is wanted?
target-weeds = Weeds
target-moss = Moss
target-feeding = Feeding
target-colour = Colour
target-water = Water
target-nothing = Nothing to treat
assess-share = How much of it?
share-few = A few spots
share-some = Here and there
share-much = Much of the lawn
assess-applied = Was anything put on this lawn this year?
assess-applied-hint = By you, the client or anyone else. Ask.
was-applied-nothing = Nothing
was-applied-something = Something
was-applied-unknown = Nobody knows
assess-applied-what = What was it?
assess-applied-on = When?
assess-applied-on-hint = Left empty when nobody knows.
assess-survivors = What is left of the last treatment?
survivors-none = Nothing
survivors-edges = Along the edges
survivors-patches = In patches
survivors-along_strip = Along a strip
assess-situation = What kind of turf is it?
assess-mown-on = When was it last mown?
assess-not-known-hint = Left empty when nobody knows.
assess-sown-on = When was it sown?
assess-sown-on-hint = Left empty when nobody knows. Young turf bears less.
situation-lawn = A lawn
situation-amenity_turf = Amenity turf
situation-sports_turf = Sports turf
situation-other_turf = Other turf
assess-history = On this lawn before
assess-do = Go on to the product

choose-heading = Which product?
choose-none = No label has been copied yet.
choose-do = Take this product
choose-kit-heading = Which kit?
choose-kit-none = No kit has been added yet.
choose-kit-do = Take this kit

plan-heading = The plan
plan-product = Product
plan-water = Clean water
plan-passes = Passes
plan-fills = Fills
plan-minutes = Walking
plan-weight = Heaviest on your back
plan-choose-passes = Passes and pace
plan-passes-at = { $n ->
    [one] One pass
   *[other] { $n } passes
} at { $pace }
plan-own-pace = your own pace
plan-other-pace = another pace
plan-water-in-range = { $water } in all, { $pace }
plan-water-out-of-range = { $water } in all, outside the label’s range, { $pace }
plan-more-passes = { $n ->
    [one] One more way
   *[other] { $n } more ways
}
plan-choose-direction = Which way to walk
heading-along = Along
heading-across = Across
plan-directions-hint = The figures are for one pass.
direction-along = Along { $side }
direction-straight = Straight away from the front
direction-side-to-side = From side to side
direction-angle = Turned { $angle } to the right of straight away
direction-advised = Advised
direction-strips = { $strips ->
    [one] One strip
   *[other] { $strips } strips
} in { $runs ->
    [one] one run
   *[other] { $runs } runs
};
direction-narrow = the narrow one { $width }.
direction-no-narrow = no narrow one.
direction-walk = { $metres } to spray, { $empty } without, { $turns ->
    [one] one turn
   *[other] { $turns } turns
}, { $minutes };
direction-volume = { $volume }.
direction-ends = Square ends miss { $missed } and wet { $overshot } beyond.
plan-along-side = Or walk along a side
plan-along-none = None: as chosen above
side-of-part = { $side }, piece { $n }
plan-edge-first = Go round the edge first
plan-edge-first-more = One strip all round; then the ends of the others need not be cut to the edge.
plan-narrow-at = Where the narrow strip lies
narrow-at-last = At the far edge
narrow-at-first = Where you begin
plan-drawn-pass = Drawn: pass
plan-pass = Pass { $n }
plan-print = Print the plan
legend-heading = Signs on the drawing
legend-fill = Fill { $fill }
legend-lap = Round the edge
legend-narrow = Narrow strip
legend-left-out = Left out
legend-dry = Stays dry
legend-pond = Water
legend-missed = Missed at the ends
legend-overshot = Wet beyond the edge
legend-start = Begin here
legend-refill = Make fill { $fill } before strip { $strip }
plan-choose-last = The last pass
plan-last-same = The same way
plan-last-across = Across the others
plan-choose-start = Where to begin
plan-choose-start-hint = As seen the way you walk. On the side the wind blows towards, so that you walk away from what is wet.
start-left = Left
start-right = Right
start-front = Front
start-back = Back
plan-narrow-heading = The narrow strip
narrow-as_it_is = Walk it like the others
narrow-some_passes = Spray it on some passes only
narrow-even_out = Make all strips equal
narrow-other_direction = Walk the other way
narrow-leave = Leave it
plan-choose-guide = How you want to be led
guide-pass = One tap per pass
guide-strip = Strip by strip
plan-change-pace = Own passes, pace or dose
plan-own-passes = Passes
plan-pace = Pace
plan-pace-hint = Empty: the pace you were timed at.
plan-dose = Dose
plan-dose-hint = The label’s, unless you want less.
plan-fills-heading = Tank by tank
plan-fill = Fill { $n }
plan-fill-line = { $product } of product, made up to { $mixture }, { $weight } on your back.
plan-fill-water = { $water } of clean water.
plan-figures = All figures
plan-treated = Area treated
plan-mixture = Mixture
plan-per-pass = Mixture in a pass
plan-dose-comes = Dose that comes of it
plan-water-comes = Water of all passes
plan-rounding = Rounding to the jug
plan-steps = Steps
plan-metres = To walk
plan-sums = The sums of product and water
plan-do = Agree to this plan

ready-heading = Ready list
ready-n-ticked = { $done } of { $of }
ready-due-again = Look at this again.
ready-checks = What the day says
ready-waits = Still waiting
ready-not-yet = { $n ->
    [0] Not ready yet
    [one] One thing still waits
   *[other] { $n } things still wait
}
ready-do = Begin mixing

weather-heading = The weather, as you see it
weather-wind-by = The wind by
wind-by-sign = What it moves
wind-by-meter = A meter
weather-wind-force = What does the wind move?
weather-wind-force-hint = Beaufort’s land signs.
force-0 = Calm
force-0-sign = Smoke rises straight up.
force-1 = Light air
force-1-sign = Smoke drifts; a flag hangs.
force-2 = Light breeze
force-2-sign = You feel it on your face; leaves rustle.
force-3 = Gentle breeze
force-3-sign = Leaves and twigs keep moving; a light flag is stretched.
force-4 = Moderate breeze
force-4-sign = Dust and paper are raised; small branches move.
force-5 = Fresh breeze
force-5-sign = Small trees in leaf sway.
force-6 = Strong breeze
force-6-sign = Large branches move; wires whistle.
weather-wind-speed = Wind speed
weather-wind-height = Held this high above the ground
weather-wind-height-hint = A forecast’s wind is for ten metres and does not count here.
weather-wind-towards = Which way does it blow?
weather-wind-towards-hint = The side of the lawn the wind goes to.
towards-front = To the front
towards-right = To the right
towards-back = To the back
towards-left = To the left
towards-none = It is calm
weather-gusts = Gusts?
weather-rain-now = Rain now?
yes-no-no = No
yes-no-yes = Yes
weather-dry-hours = How long does the forecast stay dry?
weather-dry-hours-hint = Left empty when you have not looked.
weather-temperature = Air temperature
weather-grass = The grass
of-grass-dry = Dry
of-grass-damp = Damp
of-grass-wet = Wet
weather-ground = The ground
of-ground-open = Open
of-ground-frozen = Frozen
weather-drought = Drought
drought-no = No sign of it
drought-stressed = The grass suffers
weather-do = Write down the weather

mix-heading = Mix fill { $n } of { $of }
mix-product = Product
mix-product-exact = exactly { $product }
mix-water-figure = Clean water
mix-left-before = There are { $left } still in the tank.
mix-measured = Something else was measured
mix-measured-product = Product measured
mix-measured-volume = In the tank now
mix-measured-hint = Empty: { $planned } as planned.
mix-do = The fill is made
mix-do-more = { $mixture } in the tank
tank-alt = The tank with its marks: half the water at { $half }, made up to { $full }.
tank-full = made up to { $full }
tank-half = half the water: { $half }
steps-done = { $done } of { $of } done
steps-next = Done, next step

walk-heading = Walk
walk-pass = Pass
walk-strip = Strip
walk-fill = Fill
walk-of = of { $of }
walk-in-tank = In tank
walk-to-do = To spray
walk-left = To walk
walk-pace = { $pace }
walk-refill-before = Refill before strip { $strip }.
walk-pass-done = Pass { $pass } done
walk-strip-done = Strip { $strip } done
walk-refill = Refill now
walk-pass-more = as planned: { $left } left in the tank
walk-strip-more = { $length }, { $seconds }
walk-pause = Pause
walk-sound-off = Mute the sounds
walk-sound-on = Sounds on
walk-tank-differs = Tank differs
walk-more = More
walk-more-heading = On the walk
walk-back-to = Back to the walk
walk-pause-why = Pause because of
pause-wind = Wind
pause-rain = Rain
pause-person_or_animal = A person or animal
pause-phone = The phone
pause-equipment = Equipment
pause-weather = The weather
pause-other = Something else
walk-paused-heading = Paused
walk-paused-because = Paused: { $reason }
walk-again = Look at these again before you go on
walk-seen = Seen, it is all right
walk-resume = Carry on walking
walk-refill-heading = The tank needs its next fill
walk-refill-hint = Earlier than planned. Stop at the end of a strip.
walk-refill-now = Refill now
walk-short-heading = It ran dry
walk-short-hint = How many strips of this pass were wholly done?
walk-short-strips = Strips wholly done
walk-short-n = { $n } of { $of } strips
walk-short-do = Ran short
stepper-less = Less
stepper-more = More

pass-end-heading = What is left in the tank?
pass-end-lead = Pass { $n } of { $of } is done. By plan { $planned } should be left; it cannot be more than { $most }.
pass-end-broken-off = Stopped in pass { $n } of { $of }. Read what is left in the tank; it cannot be more than { $most }.
pass-end-left = Left in the tank
pass-end-do = Confirm what is left
pass-end-do-changed = Write down what is left

correct-heading = Put it right
correct-used = Used in this pass
correct-planned = Planned
correct-add_water = Add water
correct-less_water = Less water
correct-fewer_passes = Fewer passes
correct-more_passes = One more pass
correct-as_planned = Carry on as planned
correct-do = Do this

use-up-heading = Use up what is left
use-up-leftover = Left in the tank
use-up-product = Product in it
use-up-whole_pass = One more whole pass, diluted
use-up-part = On part of the lawn
use-up-none = Nowhere here
use-up-do = Do this

wash-heading = Wash
wash-do = Washing is done

close-heading = Sign the record
close-missing = The record still lacks
close-cause = Why did the use differ?
cause-pace_or_flow = Pace or flow
cause-nozzle = Another nozzle was on
cause-missed_strip = A strip was missed
cause-area_wrong = The area was wrong
cause-unknown = I do not know
close-advice = What you told the client
close-note = Worth knowing next time
close-note-hint = It goes into the record.
close-name = Signed by
close-look-back = Look back on { $day }
close-record = The record as it will stand
close-do = Sign and close

closed-heading = The record
closed-do = Back to the lawns
record-closed = Closed and signed.
record-open = Still open: this is how it stands now.
record-part = Only part of the plan was done.
record-advice = Advice to the client
record-print = Print
record-copy = Copy as JSON
record-save = Save as a file
record-copied = Copied.
record-copy-failed = This device does not allow copying. Open the JSON below and copy it by hand.
record-json = The record as JSON
record-hash = Chained by

## The weather again
weather-again = The weather has changed: write it down again

# What is fed, and doses for single targets
plan-nutrients = What the lawn is fed
plan-nutrient = { $element }: { $now } now, { $season } this year with it
plan-target-doses = Doses that the label gives for single targets
