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
label-tag = Whose limit is it?
label-if-stated = Only if the label states one.
label-same-as = The same dose, said otherwise:
label-same-water = The same water, said otherwise:
label-second-look = Look at the label again: is it this?

label-group-name = What it is
label-name = Name on the label
label-legal-class = What it is in law
label-legal-class-hint = It stands on the label, often in small print. A fertiliser may not be used against moss or weeds.
legal-plant_protection = Plant protection product
legal-fertiliser = Fertiliser
legal-wetting_agent = Wetting agent
legal-other = Something else
label-authorisation-number = Authorisation number
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
tag-statutory = The law’s
tag-advisory = Advice
tag-own = Own

label-group-water = Water and margins
label-water-hint = Water for all passes of one visit together.
label-water-min = Least water
label-water-max = Most water
label-highest-concentration = Highest concentration
label-water-margin = Margin to open water
label-water-margin-hint = For hand-held work, from the top of the bank.

label-group-again = How often
label-least-days = Least days between two treatments
label-most-per-year = Most treatments in a year
label-year = What a year is
year-calendar = Calendar year
year-rolling = Any twelve months

label-group-after = Afterwards
label-keep-off = Keep off for
label-keep-off-hint = Empty when the label says until dry.
label-keep-off-words = The label’s words on keeping off
label-rain = What the label says of rain
rain-free_hours = It must stay dry
rain-wanted = Rain or watering is wanted
rain-not_stated = Nothing
label-rain-hours-free_hours = Dry for
label-rain-hours-wanted = Wanted within
label-mowing-words = The label’s words on mowing

label-group-protective = Protective equipment
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
