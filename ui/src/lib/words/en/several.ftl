### Several lawns in one visit: putting them together, the border between two, and their lines in the record.

lawn-of-several = Lawn { $nth } of { $of }: { $lawn }

several-heading = More lawns in this visit
several-hint = Other lawns of the same client, treated after this one with the same product, kit and dose.
several-add = Add a lawn
several-none-to-add = There is no other lawn of this client without a visit under way.
several-add-do = Add { $lawn }, { $area }
several-first = First: { $lawn }
several-then = Then { $nth }: { $lawn }
several-earlier = Earlier
several-later = Later
several-leave-out = Leave out
several-mixtures = The mixture
mixtures-one = One for all lawns
mixtures-each = Each lawn its own
mixtures-one-more = Goes on from lawn to lawn in the same tank.
mixtures-each-more = The tank is planned empty where the next lawn begins.
several-dose = Dose here: { $dose }
several-water = Water here: { $water }
several-line = { $area }, { $product } of product, { $mixture } walked, { $minutes }
several-change = Passes and ways to walk { $lawn }
several-in-all = All lawns together
several-serves = For { $lawns }
several-applied = Was anything put on { $lawn } this year?
several-survivors = What is left of the last treatment on { $lawn }?
several-sown-on = When was { $lawn } sown?
several-mown-on = When was { $lawn } last mown?
several-passes = Passes over { $lawn }

next-lawn-heading = Next: { $lawn }
next-lawn-done = { $lawn } is done.
next-lawn-after = After it: { $lawns }
next-lawn-left = Left in the tank
next-lawn-site = The site of this lawn
next-lawn-do = Begin { $lawn }
next-lawn-leave-out = Leave this lawn out
next-lawn-leave-out-hint = It stays untreated and the record says so. What is left in the tank goes to the lawn after it, or is used up by the rules for a rest.
next-lawn-has-its-own-tankful = A tankful is made first. { $left } are left of the one before and stay below it.
next-lawn-runs-short = { $needs } are needed here before anything is mixed, and { $short } are missing. Leave the lawn out, or stop where the tank runs dry: the record will say how far it went.
next-lawn-has-enough = { $needs } are needed here, and { $left } are left. Nothing more is mixed.
next-lawn-has-enough-to-its-tankful = { $needs } are needed here up to the next tankful, and { $left } are left.

too-many-lawns = These are more lawns than one visit can hold. Treat some of them in a visit of their own.
later-lawn-twice = This lawn is in the visit already.
later-lawn-of-another-client = This lawn belongs to another client: its record is another one. Open a visit of its own.
later-lawn-under-way = A visit to this lawn is under way. Finish it first, or leave this lawn out.
weather-not-seen-here = Look at the weather beside this lawn: its edges are other ones.
no-mixture-for-this-lawn = No mixture is left for this lawn and none is planned. Leave it out.

own-water-dose-differs = One mixture for all lawns puts { $value } here, and { $limit } were chosen: this lawn takes another amount of water for its area. Give each lawn its own mixture, or choose the same passes.
own-water-dose-near = One mixture for all lawns puts { $value } here, close to the { $limit } chosen.

term-next-lawns-at-real-use = The next lawns from the same mixture, at what was really used

step-next-lawn-begun = The next lawn was begun
step-lawn-left-out = A lawn was left out
stage-next-lawn = Next lawn

record-one-lawn = One lawn of the visit
record-lawn-done = What became of it
record-lawn-not-treated = It was not treated.
record-lawn-part = Only part of its plan was carried out.
record-lawn-sprayed = Mixture sprayed here
record-lawn-product = Product sprayed here
record-lawn-passes = Whole passes
record-lawns-drawn = The lawns as they were walked
deviation-lawn-not-treated = A lawn was agreed and not treated
