# Words of the pages outside a visit: first page, operator, lawns, kits, emergency. A unit is never written here: figures
# bring their own.
app-name = Evensward
app-opening = Opening the notebook…
optional = If there is one.
caution = Evensward advises. The label, the law where the work is done and the certified operator decide.
page-back = Back
field-unit-of = Unit of { $field }
advised = Advised.
sums-open = The sum, laid open

draft-restored = This carries on from what you typed before.
draft-throw = Throw it away
draft-of-lawn = A lawn
draft-of-product = A label
draft-of-kit = A kit
draft-of-calibration = A jug test and timed walk
draft-of-cleaning = A cleaning not signed yet
draft-of-operator = Me and my certificate

trouble-again = Try again
trouble-dismiss = Put this note away
failure-unreachable = The notebook did not answer. Nothing was lost: try again. ({ $detail })
file-trouble-heading = The notebook does not open
file-damaged-more = The damaged file may hold the only copy of your records. It is put aside, never deleted, and a new one is begun. Keep the file that was put aside.
file-put-aside = Put it aside and begin anew

# First start
first-heading = Who sprays and signs?
first-lead = Your name and certificate stand on every record. Then comes the first lawn.
first-go-on = Go on to the first lawn
first-lawn-lead = Nothing is written here yet. This is what comes:
first-step-measure = Measure
first-step-measure-more = A lawn by tape, wheel, paces or position, beds out, with what must stay dry beside it.
first-step-label = Copy the label
first-step-label-more = The dose, the water and the limits of your product, as its label says them.
first-step-kit = Test the kit
first-step-kit-more = A jug and a watch: what your nozzle gives, and how fast you walk.
first-step-plan = Plan and mix
first-step-plan-more = Product by area, water by what will really be walked, tank by tank.
first-step-walk = Walk
first-step-walk-more = Strip by strip or pass by pass, one tap each, with what is left always in sight.
first-step-record = Sign
first-step-record-more = A full record, the client’s note, and the water for next time.

# First page
home-heading = Lawns
home-under-way = Under way: { $stage }
home-look-back-due = Look-back due { $day }
home-look-back-later = Look back on { $day }
home-begin = Begin a visit
home-carry-on = Carry on
home-carry-on-with = Carry on: { $lawn }
home-look-back-at = Look back at { $lawn }
home-change-lawn = Change the lawn
home-last-record = Last record
home-new-lawn = Measure a new lawn
home-first-lawn = Measure the first lawn
home-first-product = Copy the first label
home-first-kit = Add your sprayer
home-first-calibration = Test your sprayer
home-drafts = Not finished
home-van = In the van
home-n-products = { $n ->
    [0] none yet
    [one] one label
   *[other] { $n } labels
}
home-n-kits = { $n ->
    [0] none yet
   *[other] { $n } kept, { $calibrated } measured
}

# Operator and device
me-heading = Me and this device
me-save = Keep my name
operator-name = Your name
operator-certificate = Certificate or licence number
operator-certificate-hint = As it stands on the certificate.
operator-firm = Firm
operator-contacts = Whom to ring when something goes wrong
operator-contacts-hint = One line each: name and number. Poison information, the firm, the emergency number.
settings-heading = This device
settings-language = Language
settings-language-auto = As the device
settings-language-en = English
settings-language-de = Deutsch
settings-customary = Also in miles an hour, pints and yards
settings-customary-more = Beside every metric figure. What is kept and recorded stays metric.
peek-on = Also in mph, pints and yards
peek-off = Metric alone
settings-data = Everything is kept on this device, in { $folder }. Nothing else protects it but the device’s own lock and encryption.

# Clients and lawns
client-name = Client’s name
client-address = Address of the lawn
client-phone = Telephone
client-none = No client
client-new = A new client
lawn-heading-new = Measure a lawn
lawn-heading-change = Change the lawn
lawn-name = What you call this lawn
lawn-name-hint = Such as front lawn, or back lawn by the pond.
lawn-no-drawing = The lawn is drawn here to scale once all its lengths are there and right.
lawn-drawn-before = Drawn as it was before: something below must be put right first.
lawn-show-wrong = Show me
lawn-net-area = To treat:
lawn-take-out = Take out a bed or pond
lawn-add = Add more grass
lawn-sides = What lies beyond the sides
lawn-sides-hint = Front is the edge you measured first; left and right as seen from there. A margin stays dry. A label’s own margin to open water is kept by itself. At water, tape to the top of the bank: the margin counts from there.
lawn-doubt = How far may the area be off?
lawn-doubt-hint = Your own judgement. At a label’s highest dose the smaller area counts.
lawn-whose = Whose lawn it is
lawn-client = Client
lawn-save = Keep this lawn
part-first = The grass
part-added = More grass ({ $n })
part-taken-out = Taken out ({ $n })
part-remove = Remove { $n }
part-what = What is it?
part-shape = Shape
part-width = Width, along the front
part-length = Length, away from the front
part-a = Side along the front
part-b = Right-hand side
part-c = Left-hand side
part-diameter = All the way across
part-radius = From the centre to the edge
part-angle = Opening
part-where = Where it lies
part-where-hint = Counted from the front left corner of the first shape. Left empty, grass is set beside it and a bed in its middle.
part-at-x = To the right of the corner
part-at-y = Away from the front
shape-rectangle = Rectangle
shape-triangle = Triangle
shape-circle = Circle
shape-part_circle = Part of a circle
taken-out-bed = Bed
taken-out-pond = Pond
taken-out-tree_ring = Tree ring
taken-out-path = Path
taken-out-other = Something else
taken-out-margin = Margin
side-rectangle-0 = Front
side-rectangle-1 = Right
side-rectangle-2 = Back
side-rectangle-3 = Left
side-triangle-0 = Front
side-triangle-1 = Right
side-triangle-2 = Left
side-circle-0 = Edge
side-part_circle-0 = First straight edge
side-part_circle-1 = Curved edge
side-part_circle-2 = Second straight edge
side-beside-of = What lies beyond: { $side }
sides-all = Beyond all { $n } sides
sides-all-differ = Not the same everywhere
sides-all-margin = Margin kept dry along all of them
sides-all-margin-set = Keep it along all { $n } sides
sides-singly = One side after the other ({ $n })
side-margin-of = Margin kept dry: { $side }
beside-unknown = not looked at
beside-nothing = nothing
beside-hedge = hedge
beside-open_water = open water
beside-neighbour = neighbour
beside-food_plants = food plants
beside-paving = paving
beside-wall = wall
beside-drain = drain
drawing-alt = The lawn drawn to scale, { $across } across and { $deep } deep. { $dry ->
    [0] Nothing in it must stay dry.
    [one] One piece, hatched, must stay dry.
   *[other] { $dry } pieces, hatched, must stay dry.
}
drawing-alt-strips = The lawn drawn to scale, { $across } across and { $deep } deep, in { $strips } strips, { $done } of them sprayed in this pass. { $dry ->
    [0] Nothing in it must stay dry.
    [one] One piece, hatched, must stay dry.
   *[other] { $dry } pieces, hatched, must stay dry.
}

# Emergency
emergency-open = Emergency
emergency-heading = Emergency
emergency-close = Close
emergency-call = Ring
emergency-no-contacts = No numbers are kept yet. Ring the emergency number of the country you are in. Write yours down under “Me and this device”.
emergency-splash = Splashed on skin or in the eyes
emergency-splash-first = Stop. Take off what is wet. Rinse with plenty of clean water.
emergency-swallowed = Swallowed
emergency-swallowed-first = Ring at once, with the label in hand.
emergency-spill = Spilled
emergency-spill-first = Keep people and pets away. Keep it out of drains and water.
emergency-no-words = No words were copied. Read the label.
emergency-read-out = Read this out when you ring
emergency-authorisation = No. { $number }
emergency-no-products = No label has been copied yet. Read out the label itself.
emergency-general = The words in bold are common practice, without a source. The label and the safety data sheet come first.

# A lawn of which a broken-off visit left a part untreated
unfinished-heading = Broken off
unfinished-left = { $left } still to treat. { $treated } were treated on { $day }.
unfinished-do = Treat the rest
