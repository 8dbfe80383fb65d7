# Words of the label form and of the lists of labels.
products-heading = Labels
products-lead = Each label as you copied it. Changing one makes a new version; old visits keep theirs.
products-new = Copy a label
label-part = Label, part { $n } of { $of }
label-part-of = { $name }, part { $n } of { $of }
label-groups = All parts of the label
label-group-wrong = Look here.
label-next = Next
label-before = Back a part
label-save = Keep this label
label-if-stated = Only if the label states one.
label-same-as = The same dose, said otherwise:
label-same-water = The same water, said otherwise:
label-seen-so = I looked again: it stands so on the label

label-group-name = What it is
label-name = Name on the label
label-legal-class = What it is in law
label-legal-class-hint = It stands on the label, often in small print. A fertiliser may not be used against moss or weeds.
legal-plant_protection = Plant protection product
legal-fertiliser = Fertiliser
legal-wetting_agent = Wetting agent
legal-other = Something else
label-authorisation-number = Authorisation number
label-authorised-until = Authorised until
label-use-up-by = Must be used up by
label-use-up-by-hint = Only if an end was set for using up what was bought before.

label-group-contents = What is in it
label-actives = Active substances
label-actives-hint = As the label names them, with their content. Two products with the same one count as one through the year.
label-active-name = Active substance { $n }
label-active-content = Content of { $n }
label-active-add = Add an active substance
label-active-out = Take out { $n }
label-analysis = Nutrients
label-analysis-hint = The declared analysis, if it feeds.
label-analysis-basis = Per cent of what?
analysis-basis-ww = Of the weight
analysis-basis-wv = Weight in a volume
nutrient-n = Nitrogen, N
nutrient-p = Phosphorus
nutrient-k = Potassium
nutrient-fe = Iron, Fe
nutrient-as = Declared as
nutrient-p-oxide = P₂O₅
nutrient-p-element = P
nutrient-k-oxide = K₂O
nutrient-k-element = K

label-group-use = What it is for
label-situations = Where the label allows it
label-situations-hint = Only what the label names. None ticked: it names none.
label-hand-held = Hand-held sprayers
label-hand-held-hint = A knapsack with a lance is hand-held work.
by-hand-not-stated = Not stated
by-hand-allowed = Allowed
by-hand-not_allowed = Not allowed
label-purposes = What the label allows it for
purpose-weeds = Weeds
purpose-moss = Moss
purpose-feeding = Feeding
purpose-colour = Colour
purpose-water = Water
purpose-disease = Disease
purpose-pests = Pests
purpose-growth = Growth
label-form = Form
form-liquid = Liquid
form-crystals = Crystals, dissolved
form-granules = Granules or powder
label-density = Weight of a litre
label-density-hint = Only when it is dosed by weight but measured in a jug.
label-kills-grass = It kills grass
label-contains-iron = It contains iron
label-contains-iron-more = It stains paving, clothes and shoes.

label-group-dose = The dose
label-dose = Dose for this use
label-dose-hint = Product per area, never per tank. Type it in the label’s own unit.
label-highest-dose = Highest single dose
label-highest-dose-hint = Often the same. It is never exceeded.
label-least-dose = Least dose
label-targets = Another dose for another target
label-targets-hint = Only if the label gives several. The dose above stays the main one.
label-target-purpose = Purpose { $n }
label-target-words = Target { $n }, in the label’s words
label-target-dose = Dose { $n }
label-target-highest = Highest single dose { $n }
label-target-add = Add a dose for a target
label-target-out = Take out dose { $n }
tag-statutory = Binding
tag-advisory = Advice
tag-own = Own rule
tag-by-class = As its class says
limit-whose = Whose limit: { $limit }
limit-where = Where it stands: { $limit }
limit-from-label = The label
limit-from-safety-sheet = Safety sheet
limit-from-law = The law
limit-from-code-of-practice = Code of practice
limit-from-own = Own setting

label-group-water = The water
label-water-hint = Water for all passes of one visit together.
label-water-min = Least water
label-water-max = Most water
label-highest-concentration = Highest concentration

label-group-again = How often
label-least-days = Least days between two treatments
label-most-per-year = Most treatments in a year
label-most-amount = Most in a year, per area
label-year = What a year is
year-calendar = Calendar year
year-rolling = Any twelve months

label-group-when = When, and when not
label-months = Months in which the label allows it
label-months-hint = None ticked: the label names none.
month-1 = Jan
month-2 = Feb
month-3 = Mar
month-4 = Apr
month-5 = May
month-6 = Jun
month-7 = Jul
month-8 = Aug
month-9 = Sep
month-10 = Oct
month-11 = Nov
month-12 = Dec
label-temperature = Temperature
label-temp-min = Not below
label-temp-max = Not above
label-young-turf = Not on turf younger than
label-young-turf-hint = Counted from sowing. Only if the label states one.
label-no-drought = Not in drought

label-group-after = Keep off and rain
label-keep-off = Keep off for
label-keep-off-hint = Empty when the label says until dry.
label-keep-off-words = The label’s words on keeping off
label-rain = What the label says of rain
rain-free_hours = It must stay dry
rain-wanted = Rain or watering is wanted
rain-not_stated = Nothing
label-rain-hours = Rain
label-rain-hours-free_hours = Dry for
label-rain-hours-wanted = Wanted within

label-group-mowing = Mowing
label-mow-before = Not mown for, before
label-mow-after = Not mown for, after
label-mowing-words = The label’s words on mowing

label-group-margins = Open water
label-water-margin = Margin for hand-held work
label-water-margin-hint = From the top of the bank.
label-water-margin-boom = Margin for a boom
label-water-margin-boom-hint = Only if the label states another. It does not count for a lance.

label-group-mixing = Mixing
label-formulation = Formulation
label-formulation-hint = Two letters, often behind the name. They say what goes into the tank first.
label-formulation-not-stated = Not on the label
label-formulation-wp = WP, powder to be wetted
label-formulation-wg = WG, granules that fall apart
label-formulation-wt = WT, tablets that fall apart
label-formulation-sp = SP, powder that dissolves
label-formulation-sg = SG, granules that dissolve
label-formulation-st = ST, tablets that dissolve
label-formulation-sc = SC, suspension
label-formulation-cs = CS, capsules in water
label-formulation-se = SE, suspension and emulsion
label-formulation-od = OD, suspension in oil
label-formulation-ec = EC, oil that makes an emulsion
label-formulation-ew = EW, emulsion in water
label-formulation-me = ME, clear emulsion
label-formulation-sl = SL, liquid that dissolves
label-formulation-gr = GR, granules to strew
label-partners = May it be mixed with others?
with-others-not-stated = Not stated
with-others-allowed = Yes
with-others-forbidden = No
label-partners-words = The label’s words on mixing
label-dissolves = How much dissolves
label-dissolves-hint = So that no more is weighed than the water takes.
dissolves-not-stated = Not known
dissolves-iron_sulphate_7 = Iron sulphate crystals, as published
dissolves-own = My own table
label-solubility = My own table
label-solubility-hint = From the label or the safety sheet: how much dissolves in a litre of water that cold.
label-solubility-at = Water, line { $n }
label-solubility-per-litre = Dissolves, line { $n }
label-solubility-add = Add a line
label-solubility-out = Take out line { $n }

label-limits = Every limit copied ({ $n })

label-group-protective = Protective equipment
label-protective-hint = Copy what the label asks for. Handling the concentrate asks for the most.
label-protective-mixing = When handling the product
label-protective-spraying = When spraying
label-protective-washing = When washing
protective-gloves = Gloves
protective-coverall = Coverall
protective-boots = Rubber boots
protective-face_shield = Face shield
protective-glasses = Safety glasses
protective-apron = Apron
protective-respirator = Mask with filter

label-group-first-aid = When something goes wrong
label-first-aid-hint = Copy the words of the label or the safety data sheet. They are one touch away from every page, with no signal.
label-splash = Splashed on skin or in the eyes
label-swallowed = Swallowed
label-spill = Spilled
label-hazard = Hazard words

label-group-signed = Who copied it
label-version = Version or date of the label
label-version-hint = Printed on it, so that you see when it has changed.
label-entered-by = Copied from the label by
label-entered-on = On

# The second look and the limits as they are listed
second-look-dose = { $hundred } is { $hectare }: does the label say the same?
limit-is = { $limit }
limit-allowed = allowed
limit-not-allowed = not allowed
limit-not-in-drought = not in drought
no-such-month = Months are numbers from 1 to 12: choose them again.
label-temperatures-reversed = The highest temperature is not above the lowest: look at the label again.
formulation-unknown = { $code } is not one of the two-letter codes known here: look behind the product's name on the label.
number-too-large = This is too much: at most { $limit } can be.
target-dose-above-its-highest = This dose is above its own highest, or one is a volume and the other a weight: look at the label again.
analysis-above-hundred = Together this is more than the product itself: look at the label again.

# Turf that a label names
lawn = a lawn
amenity_turf = managed amenity turf
sports_turf = sports turf
other_turf = other turf

# The rest of a lawn, a visit that only looks back, slips of the pen, and the second look
rest-measured-anew = The lawn has been measured otherwise since: nobody knows where the rest lies. Treat the lawn anew when the interval allows it.
rest-unknown = Nobody knows which ground that visit treated: its rest cannot be told from it.
looked-back-only = Looked back on the visit before; nothing is treated.
looked_back = looked back only
look-at-the-dose-again = Look at the label once more, and tick that it says the same dose.
slip-dose = { $value } lies outside what the label itself states: was { $meant } meant?
slip-water = Water of { $value } is unusual on foot, or far from the label’s other figure: was { $meant } meant?
slip-concentration = The label's concentration of { $value } does not fit its dose and water, which make { $meant }: look at the label again.
dose-above-highest-for-target = { $value } is more than the label's highest dose for this purpose, { $limit }.
dose-fine-for-target = Not more than the label's highest dose for this purpose, { $limit }.
rest-finished-already = The rest of that visit has been treated already.
dose-above-highest-for-some-target = { $value } is more than the label's highest dose for one of the targets of this purpose, { $limit }: look which one is meant.

# The versions of a label
label-versions = Versions of this label
label-versions-lead = Each version stays as it was copied, and so do the records that hold to it.
label-versions-to-label = Open the label
label-version-n = Version { $n }
label-version-current = Holds now: new visits take this one.
label-version-old = An older version, to be read. New visits take a later one.
label-version-copied = Copied by { $by } on { $on }.
label-version-kept = Kept here on { $on }.
label-version-same = The same in every field as the version before.
label-version-changes = { $n ->
    [one] One thing changed
   *[other] { $n } things changed
}
label-version-was = Before: { $was }
label-version-was-not-stated = Before: not stated
label-version-not-stated = Not stated
label-version-visits = { $n ->
    [one] One visit holds to it
   *[other] { $n } visits hold to it
}
label-version-no-visit = No visit holds to it.
label-version-visit-open = under way
label-copied-on = Copied on
label-air-not-below = Air, not below
label-air-not-above = Air, not above
label-rain-for = Dry, or rain wanted, for
