### Words of the panels at the tank: the water, products that share it, the jar test, equipment by phase, containers.

water-heading = The water to mix with
water-source = Where does it come from?
water-ph = pH
water-hardness-field = Hardness
water-hardness-field-hint = As calcium carbonate, or in German degrees. On the supplier’s page or a test strip.
water-temperature = How warm it is
water-bucket = Dissolve it first in this much
water-bucket-hint = Left empty, it is half of the fill.
water-do = Write down the water
water-seen = The water is written down.
water-change = Write it down again

plan-fill-partner = { $amount } of { $product }.
partners-heading = Products in this tank
partners-order = Order of adding
partner-dose = Dose: { $dose }
partner-formulation = { $formulation } by its formulation
partner-leave-out = Leave out
partners-add = Add a product to the same tank
partners-add-hint = Every label must allow it. Water, amounts and steps follow from all of them.
partner-add-dose = Dose of it
partner-add-dose-hint = Left empty, it is its label’s.
partner-add-do = Add { $product }
partners-none-to-add = No other label that is kept here can share this tank.

jar-heading = Try it in a jar first
jar-outcome = What did the jar show?
jar-showed-fine = It stayed even
jar-showed-heat = It grew warm
jar-showed-clumps = Clumps or grit
jar-showed-layers = Layers or scum
jar-note = More words, if any
jar-do = Write down the jar test

tick-all = { $n ->
    [one] Tick the one left
   *[other] Tick all { $n } left
}
mix-partner-measured = { $product } measured
checks-all = { $n ->
    [one] The one check, with its value and limit
   *[other] All { $n } checks, with their values and limits
}
check-rule = Rule: { $rule }.
