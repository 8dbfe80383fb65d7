# Kits, calibrations, cleaning: what the checks and the forms say.

## Sources
nozzle-wear-extension = Extension advice (University of Nebraska): within 10 % of the nominal flow
directive-2009-128-article-8 = Regular technical checks, Directive 2009/128/EC, article 8 (from memory); every twelve months is common practice
half-rate-rule = Half-rate rule for tapering patterns (Ohio State University, Bulletin 817)

## What was last in the sprayer
cleaning-not-signed = Something that kills grass was last in it. It is ticked as cleaned, but nobody signed for it. Sign the cleaning first.
sprayer-held-the-same = { $product } was last in it, the same as now, and it was not cleaned since. Look for old mixture before you fill.
cleaning-owed-before-another = { $product } was last in it and it was not cleaned since. Clean it before another product goes in.
cleaning-owed-and-signed = Clean it and sign for it: something that kills grass was last in it.
cleaning-owed-signature = Sign the cleaning: something that kills grass was last in it.
cleaning-owed-unknown = Clean it: nobody knows what was last in it.
cleaning-owed-product = Clean it before another product goes in.
clean-wear = Put on what the label of the last product asks for when washing.
clean-empty = Spray out what is left where that label allows it. Never into a drain, a ditch or onto paving.
clean-rinse = Fill to a fifth or a quarter with clean water, shake, and spray it out through the lance where the label allows it.
clean-step-agent = Fill again with the cleaning agent that the label names, let it stand as long as it says, and spray it out.
clean-parts = Take off nozzle, strainer and filters and wash them apart.
clean-again = Rinse with clean water twice more, three times in all, through hose and lance.
clean-outside = Wash the tank, straps and lance from outside, on ground that takes the water.
clean-step-sign = Sign that it was done.
cleaned-with-agent = { $rinses ->
    [one] Rinsed once, with a cleaning agent. { $words }
   *[other] Rinsed { $rinses } times, with a cleaning agent. { $words }
  }
cleaned-with-water = { $rinses ->
    [one] Rinsed once with clean water. { $words }
   *[other] Rinsed { $rinses } times with clean water. { $words }
  }
cleaning-in-the-future = This day is still to come. Give the day of the cleaning.
rinses-too-few = Rinse at least { $limit } times, then sign.
sign-the-cleaning-first = Something that kills grass is last in it. Clean it and sign for it first, then change this.

## Calibration
calibration-kit-unknown = It was not written down which nozzle and pressure this was measured with. Measure again when you can.
calibration-kit-same = Measured with the nozzle, pressure and swath that the kit has now.
calibration-ended-by-nozzle = The kit has another nozzle since it was measured. Measure again.
calibration-ended-by-pressure = The kit works at another pressure or with another valve than it was measured with. Measure again.
calibration-ended-by-swath = The swath, height or spray angle changed since it was measured. Measure again.
calibration-ended-by-later = It was measured again later.
calibration-once = Measured { $value ->
    [one] once
   *[other] { $value } times
  }: three catches and three walks say more. Measure again when you can.
catches-apart = One catch is { $value } from the mean; at most { $limit } is fine. Measure again.
walks-apart = One walk is { $value } from the mean; at most { $limit } is fine. Walk again.
walks-not-loaded = The walks were not made with the sprayer full on the back. You walk slower with it.
calibration-repeats-agree = Catches and walks agree: the worst catch is { $value } from the mean.
nozzle-sound = The nozzle gives { $value } more or less than the nominal { $nominal } at this pressure: fine.
nozzle-worn = The nozzle gives { $value } more than the nominal { $nominal } at this pressure. It is worn: replace it.
nozzle-low = The nozzle is { $value } off the nominal { $nominal } at this pressure. Clean it, look at the pressure, and measure again, or replace it.
two-ways-agree = Jug and walk agree with the test plot: { $value } apart.
two-ways-disagree = Jug and walk differ from the test plot by { $value }; at most { $limit } is fine. Do both again.
sprayer-check-unknown = Nobody wrote down when the sprayer was last checked over. Check it for leaks, straps, hose, valve and strainers.
sprayer-check-in-the-future = The check of the sprayer is dated in the future. Correct its day.
sprayer-checked = The sprayer was checked over on { $value }.
sprayer-check-due = The sprayer was last checked over on { $value }, more than { $limit } months ago. Check it for leaks, straps, hose, valve and strainers.
swath-within-pattern = The swath of { $value } is within the { $limit } that the pattern gives.
swath-wider-than-pattern = The swath of { $value } is wider than the { $limit } that the pattern gives: stripes would stay. Measure it on dry paving.

## The forms
nozzle-size-unknown = There is no nozzle size { $size } here. Choose one, or give the maker's flow and pressure.
needed-for-the-spacing = The swath by height and angle needs this.
spacing-not-believed = Height and angle come to a swath of { $value }. Look at both again.
measure-at-least-once = Give at least one measurement.
catches-too-few = A jug test takes { $limit } catches.
walks-too-few = A timed walk takes { $limit } walks.
walk-with-the-sprayer-full = Walk with the sprayer full on your back, then tick this.
catch-once-more = One catch is { $value } from the mean; at most { $limit } is fine. Catch again, or correct the one that is wrong.
walk-once-more = One walk is { $value } from the mean; at most { $limit } is fine. Walk again, or correct the one that is wrong.
kit-passes-out-of-range = Ask about 1 to { $limit } passes.
