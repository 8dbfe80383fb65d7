# The mixture: the water, what dissolves in it, partners in one tank, the order of adding.

# The operator's own table of what dissolves
solubility-empty = Enter at least one line: a temperature and how much dissolves in a litre of water at it.
solubility-not-above-zero = How much dissolves must be above zero.
solubility-temperature-twice = Two lines are for { $temperature }. Keep one of them.

# When a product goes into the tank
adding-dry = wettable powders, dispersible granules and whatever else is dry
adding-flowable = liquid flowables and suspensions
adding-emulsion = emulsions
adding-solution = solutions and wetting agents

# Sources
iron-sulphate-table = Solubility of iron(II) sulphate as anhydrous salt, counted over to the crystals with their water

# Steps that can be taken back
step-partner-chosen = A product to share the tank
step-partner-left-out = A partner left out
step-water-seen = The water looked at
step-jar-tested = The jar test

# The water
iron-and-water-ph = A fertiliser maker’s note on iron and the water’s pH
from-memory = From memory, no source seen
water-not-looked-at = Look at the water: where it comes from, how warm it is, its pH and hardness as far as you know them.
water-not-seen = Nobody has looked at the water yet.
water-ph-unknown = The water’s pH is not known. In alkaline water iron turns to rust and is lost: dissolve it, strain it and use it fresh.
water-alkaline = This water is alkaline, and iron turns to rust in it: dissolve, strain and use it fresh, without a wait.
water-ph-fine = Iron stays dissolved in this water.
water-hardness-unknown = The water’s hardness is not known. Hard water is nearly always alkaline.
water-hard = This water is hard. Iron drops out of it: dissolve, strain and use it fresh.
water-soft = This water is soft enough.

# What dissolves
solubility-not-known = How much of { $product } dissolves is not known. Dissolve it in { $water } and see that nothing is left at the bottom before it goes on.
water-temperature-unknown = How warm the water is decides how much of { $product } dissolves in { $water }. Measure it.
temperature-outside-table = The table for { $product } goes from { $coldest } to { $warmest }, and the water has { $temperature }: how much dissolves in { $water } is not known.
does-not-dissolve = { $value } of { $product } do not dissolve in { $water } at { $temperature }: { $limit } is the most, and you would be at { $percent }. Take more or warmer water, or make more fills.
dissolves-barely = { $product } is at { $percent } of what { $water } can hold at { $temperature }. Stir long, and strain it.
dissolves = { $product } dissolves: { $percent } of what { $water } can hold at { $temperature }.

# Partners
tank-mix-guidance = Advice on tank mixing, Sprayers101
too-many-products = That would be { $value } products in one tank, and { $limit } is the most that is advised.
number-of-products-fine = { $value } products share the tank.
partners-allowed = The label of { $product } lets it be mixed with another product.
partners-forbidden = The label of { $product } forbids mixing it with another product.
partners-not-stated = The label of { $product } says nothing of partners. Ask its maker before you mix.
partners-share-an-active = { $product } and { $other } both hold { $active }: what their labels allow of it counts together. Add it up before you mix.
partner-is-the-product = This is the visit’s own product. Choose another one to share the tank.
adding-order-line = { $name }: { $group ->
    [adding-dry] with whatever is dry
    [adding-flowable] with liquid flowables and suspensions
    [adding-emulsion] with emulsions
    [adding-solution] with solutions and wetting agents
   *[other] formulation not entered: by what it looks like
  }.
adding-not-known = formulation not entered

# The jar test
jar-test-guidance = Utah State University Extension, using a jar test
jar-test-owed = Try the partners in a jar first, and say what it showed.
jar-not-tested = The partners have not been tried in a jar.
jar-fine = The jar stayed even.
jar-heat = The jar grew warm: these products do not go together.
jar-clumps = The jar shows clumps or grit: these products do not go together.
jar-layers = The jar shows layers or scum: these products do not go together.
jar-water = Put on what the label asks for. Half a litre of the water you will use, in a clear jar.
jar-add = Next { $amount } of { $name }, and stir.
jar-shake = Close it and turn it over ten times.
jar-stand = Let it stand for 15 minutes.
jar-look = Feel it for warmth and look for clumps, grit, layers or scum.
jar-empty = Empty it into the tank if it is fine; else it is waste like the product itself.

# Steps with the product’s name, where several share the tank
mix-measure-liquid-of = Measure { $product } of { $name } in the jug, at eye level.
mix-weigh-of = Weigh { $product } of { $name }.
mix-dissolve-and-strain-of = Dissolve { $name } in a bucket of water and strain it.
mix-make-paste-of = Stir { $name } to a paste with a little water.
mix-pour-product-of = Pour { $name } into the tank.
mix-rinse-measure-of = Rinse the measure of { $name } three times into the tank; an emptied container too.
mix-agitate-before-next = Shake it until it is even before the next product goes in.
all-ticked-already = All of these are ticked.

# Equipment at the concentrate
concentrate-guidance = The concentrate is the riskiest part of the work
mixing-lacks-piece = The label asks for { $piece ->
    [gloves] gloves
    [coverall] a coverall
    [boots] boots
    [face-shield] a face shield
    [glasses] safety glasses
    [apron] an apron
    [respirator] a mask
   *[other] a piece
  } on the walk and not for mixing. Wear it at the concentrate too.

# Passed with a reason, in the record
deviation-passed-dissolving = Passed with a reason: more than the water dissolves
deviation-passed-jar-test = Passed with a reason: what the jar showed
deviation-passed-partners = Passed with a reason: the number of products in one tank
deviation-passed-partner-label = Passed with a reason: what a label says of partners

# The checks in the record
record-checks = Checked on the way, with what was found, the limit, and whose limit it is

# The mixture in the record
record-partner = Shared the tank
record-mix-water = The water to mix with
record-water-source = From
record-water-ph = pH
record-water-hardness = Hardness, as calcium carbonate
record-water-temperature = Temperature
record-water-bucket = Dissolved in
record-jar-test = The jar test
record-jar = It showed
jar-outcome-fine = nothing, it stayed even
jar-outcome-heat = warmth
jar-outcome-clumps = clumps
jar-outcome-layers = layers
record-worn-mixing = Worn at every fill
record-worn-washing = Worn for washing
