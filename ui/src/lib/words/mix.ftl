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
