# The day: air, sky, gusts, ground kept back from the wind, and when to look again.

# How fast a drop dries: information beside the wind, never a Stop.
drying-worked-out = A drop dries at a difference of { $value } between dry and wet air.
drying-slow = Drops dry slowly: { $value } between dry and wet air, and { $limit } is the least that is preferred. They hang longer in the air.
drying-fine = Drops dry as they should: { $value } between dry and wet air, up to { $limit }.
drying-fast = Drops dry fast: { $value } between dry and wet air, over { $limit }. Larger drops and an earlier hour help.
drying-too-fast = Drops dry too fast: { $value } between dry and wet air, over { $limit }. Wait for a cooler, damper hour.

gust-below-wind = Gusts are at least as strong as the wind: look at the meter again.
gust-without-meter = The speed of gusts belongs to a meter's reading: give the wind by meter too, or leave it empty.
gusts-too-strong = Gusts of { $value } are too strong: at most { $limit }.

# Still, layered air near the ground carries fine drops far.
inversion-calm-and-clear = Calm under a clear sky: the air may lie in layers and carry fine drops far, most often from 17 to 19 hours and until after sunrise. Wait until it stirs.
inversion-mist-hangs = Mist, smoke or dust hangs in still air: the air lies in layers and carries fine drops far. Wait until it clears.
inversion-mist-in-wind = Mist, smoke or dust hangs though there is wind: look whether the air lies in layers.
inversion-no-sign = No sign that the air lies in layers.
inversion-not-looked-for = Nobody has looked whether mist or smoke hangs, or whether it is calm under a clear sky.

keep-back-no-edge = The wind as last seen blows towards no edge that must stay clear: there is nothing to keep back from.
keep-back-nothing-kept = No ground is kept back now.
keep-back-no-wider-than-the-margin = The margin there is as wide already: give a greater width.
keep-back-offered = Kept dry for { $width } along the edges that the wind blows towards, { $left } of { $all } can still be done.
keep-back-kept = { $width } stay dry along the edges that the wind blows towards: { $left } of { $all } are done today.

limit-not-above-calm = The strongest wind must be above what counts as calm.
limit-not-above-lowest = The highest temperature must be above the lowest.
limit-wind-calm = Calm below
limit-wind-ideal-from = Ideal from
limit-wind-ideal-to = Ideal to
limit-wind-most = Too strong from
limit-temperature-lowest = Too cold below
limit-temperature-highest = Too hot above
limit-drying-least = Drops dry slowly below
limit-drying-most = Drops dry fast above
limit-drying-avoid = Drops dry too fast above
limit-keep-back = Kept dry along an edge downwind
limit-reminder = Look at the weather again after

not-a-compass-direction = Give the wind's direction as a point of the compass, such as SW, or in degrees from 0 to 360.
wind-direction-told-twice = The direction is told twice, by the compass and by the lawn's side: leave one empty.
weather-due-after-a-while = The weather was last seen { $value } ago: look again ({ $limit }).
weather-due-at-end = Look at the weather once more: the record says how it was at the end.
weather-due-at-fill = Look at the weather before this tankful.

wind-lawn-bearing-unknown = The wind is told by the compass, and nobody knows how the lawn lies: tell the side it blows towards, or enter the lawn's bearing.
wind-may-reach-edge = The wind may reach { $beside }: it is told only roughly.
wind-strength-unknown = Nobody knows how strong the wind is at { $beside }.
wind-towards-edge-kept-back = The wind blows towards { $beside }, and the ground before it is kept dry.

# Where limits of the day stand
australian-weather-bureau = Australian weather bureau, as quoted in extension guides
australian-spray-advice = Australian advice on spraying
us-stewardship-default = US pesticide stewardship pages, where a label is silent
extension-inversion-guides = extension services' guides to inversions
