### Words of the guide between two taps: the tally, readings in mid-pass, causes, pauses, taking back, rests and rinsings.

# The refill as the tank shows it
walk-refill-soon = Refill soon: before strip { $strip }.
refill-earlier = The tank will not last as planned: refill before strip { $strip }, not { $planned }.
refill-in-this-pass = The tank will not last for this pass: refill before strip { $strip }.
refill-runs-dry-later = At this rate the tank runs dry in strip { $strip } of pass { $pass }, before its refill.
refill-none-left = At this rate the tank runs dry in strip { $strip } of pass { $pass }, and no fill is left. Put no product in: tell it when it runs dry.
walk-tank-lasted = It lasted: pass done
walk-look-into-tank = the tank differs from the plan: look into it

# What is left before a refill in mid-pass
mix-left-lead = Look into the tank before you fill it. { $planned } should be left; it cannot be more than { $most }.
mix-left-as-planned = As planned: go on
mix-left-do = Write down what is left
mix-took-more = These strips took { $used }, where { $planned } were planned. Look at nozzle, pressure and hose, and at your pace. What was mixed stays as it is: the pass is put right when it is done.
mix-took-less = These strips took { $used }, where { $planned } were planned. Is the nozzle blocked? Never blow through it. Is the pressure low, or was a strip missed? The pass is put right when it is done.
left-is-known = What is left in the tank is known already.
record-left-measured = { $left } were left before it; { $used } went out of { $planned } planned until then
record-left-as-planned = { $left } should have been left before it; nobody looked

# How long it took
correct-walked = Walked in
correct-walked-planned = Planned time
record-pass-time = { $walked } walked, { $planned } planned

# Why a pass strayed
strayed-heading = Why?
strayed-less-in-planned-time = It took { $percent } less than it should, in the time that was planned.
strayed-less-in-less-time = It took { $percent } less than it should, and less time.
strayed-more-in-planned-time = It took { $percent } more than it should, in the time that was planned.
strayed-more-in-more-time = It took { $percent } more than it should, and more time.
strayed-hint = The likeliest first. It goes into the record, and into what is advised.
strayed-do = This is why
strayed-change = It was something else
pass-cause-nozzle_blocked = The nozzle or its strainer was blocked
pass-cause-nozzle_worn = The nozzle is worn, or another one is on
pass-cause-pressure_low = The pressure was low
pass-cause-pressure_high = The pressure was high
pass-cause-missed_strip = A strip was missed
pass-cause-pace_quick = I walked faster
pass-cause-pace_slow = I walked slower
pass-cause-leak = Something leaked
pass-cause-unknown = I do not know
cause-advice-nozzle-blocked = Relieve the pressure, take nozzle and strainer out with gloves on, and rinse or brush them over the tank. Never blow through them with your mouth. The passes to come are taken as planned again; ground that got too little is not sprayed twice on a guess.
cause-advice-nozzle-worn = Until another nozzle is on and caught in the jug, the passes to come are taken to use as much. Calibrate before the next lawn.
cause-advice-pressure-low = Pump as you did when you calibrated. The passes to come are taken as planned again.
cause-advice-pressure-high = Pump as you did when you calibrated. High pressure makes fine drops that drift. The passes to come are taken as planned again.
cause-advice-missed-strip = Take the reading back, spray the missed strip at the usual pace now, and read the tank again. Only a strip that you are sure of: two times is too much.
cause-advice-pace-quick = Walk by the beat, or go on so: the passes to come are taken to use as little.
cause-advice-pace-slow = Walk by the beat, or go on so: the passes to come are taken to use as much.
cause-advice-leak = Stop until it is tight. What ran out lies in one place: keep people and animals off it, and do what the label says of a spill. Put no product in for it.
cause-advice-unknown = Catch the nozzle in the jug before the next pass. The passes to come are taken to use as much.

# Pauses
pause-tell = Why did you stop?
pause-another-day-heading = Finish it another day
pause-another-day-hint = The visit is closed with a part record, and the rest of the lawn waits on the first page. Mixture is not kept in the sprayer: what is left is used up where the dose allows, or kept as your law says, and the sprayer is washed.
pause-another-day-do = End for today
stop-reason-another_day = The rest another day
deviation-stopped-another-day = Stopped: the rest is treated on another day
deviation-paused-weather = Paused: the weather

# Causes in the record
deviation-pass-cause-nozzle-blocked = The nozzle was blocked: used in that pass
deviation-pass-cause-nozzle-worn = The nozzle is worn or another one was on: used in that pass
deviation-pass-cause-pressure-low = The pressure was low: used in that pass
deviation-pass-cause-pressure-high = The pressure was high: used in that pass
deviation-pass-cause-missed-strip = A strip was missed: used in that pass
deviation-pass-cause-pace-quick = Walked faster: used in that pass
deviation-pass-cause-pace-slow = Walked slower: used in that pass
deviation-pass-cause-leak = Something leaked: used in that pass
deviation-pass-cause-unknown = A pass took more or less, nobody knows why: used in that pass

# Taking back
undo-to = Take back to here
undo-older = { $n ->
    [one] One older step is listed once these are taken back.
   *[other] { $n } older steps are listed once these are taken back.
}
undo-with = { $n ->
    [one] Takes back this step.
   *[other] Takes back { $n } steps.
}
step-left-read = The tank was looked into before fill { $fill }
step-cause-told = Why pass { $pass } differed
step-pause-reason-told = Why it was paused

# Rests and rinsings
using-up-part-on-strips = Spray it on strips { $first } to { $last }, marked on the drawing: { $ground }, where at least { $area } are needed.
using-up-part-several-times = Spray it on strips { $first } to { $last }, marked on the drawing: { $ground }, where at least { $area } are needed. That is more than one pass takes there: walk over them { $times } times.
term-whole-pass-takes = One whole pass takes
term-product-left = Product left
term-dose-still-open = Of the highest dose still open there
term-smallest-ground = Product by dose: the smallest ground
drawing-marked = The strips that take the rest: { $strips }
rinsings-heading = The rinsings
rinsings-product = Product in pump, hose and lance
rinsings-fit = The rinsings may go on the lawn, spread over at least this area, on ground that did not take the rest.
rinsings-are-waste = The highest dose is reached: rinsings may go nowhere on this lawn. Collect them in a marked container; the label and the law of your place say who takes them. Never into a drain, a ditch or water.

# The trial on paving
trial-offer = For the first time, or with a new nozzle: walk a marked length on paving with clean water. It gives the flow, your pace and your beat at once.
trial-heading = Trial on paving
trial-how-mark = Mark a length on dry paving, ten metres say, with chalk or two sticks. Only clean water in a clean sprayer.
trial-how-water = Fill the sprayer as for a lawn and put it on: the weight is part of your pace.
trial-how-prime = Spray until the fan is even, then fill up to a mark on the tank that you can read exactly.
trial-how-walk = Spray from the first mark to the second as you would on a lawn. Tap as you pass each mark, and spray only in between. Some lengths make a round; four are good.
trial-how-refill = After each round pour water from the jug back up to the mark, and write down how much. Three rounds or more.
trial-how-width = While the paving is wet, measure how wide it is wet.
trial-length = Marked length
trial-so-far = So far
trial-tally = { $walks ->
    [one] One length
   *[other] { $walks } lengths
} walked, { $rounds ->
    [one] one round
   *[other] { $rounds } rounds
} poured back
trial-after = After this length
trial-steps = Steps of the last length
trial-steps-hint = If you counted them: they become your beat.
trial-poured = Poured back up to the mark
trial-poured-hint = For { $seconds } of spraying. Left empty, the next length belongs to the same round.
trial-poured-do = The round is done
trial-width-heading = The wet width
trial-width-now = Swath by the widths so far: { $swath }.
trial-width = Wet width
trial-width-do = Keep this width with the kit
trial-to-figures = To the figures, and keep them
trial-start = Start at the first mark
trial-stop = At the second mark
