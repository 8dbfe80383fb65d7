### Worte der Felder am Tank: Wasser, Mittel im selben Tank, Glasprobe, Schutzausrüstung je Arbeitsschritt, Behälter.

water-heading = Das Wasser zum Ansetzen
water-source = Woher kommt es?
water-ph = pH
water-hardness-field = Härte
water-hardness-field-hint = Als Calciumcarbonat oder in deutschen Graden. Vom Versorger oder Teststreifen.
water-temperature = Wie warm es ist
water-bucket = Vorher in so viel auflösen
water-bucket-hint = Leer gelassen, ist es die halbe Füllung.
water-do = Wasser festhalten
water-seen = Das Wasser ist festgehalten.
water-change = Neu festhalten

plan-fill-partner = { $amount } { $product }.
partners-heading = Mittel in diesem Tank
partners-order = Reihenfolge der Zugabe
partner-dose = Aufwandmenge: { $dose }
partner-formulation = { $formulation }, nach der Formulierung
partner-leave-out = Weglassen
partners-add = Ein Mittel in denselben Tank
partners-add-hint = Jedes Etikett muss es erlauben. Wasser, Mengen und Schritte richten sich nach allen.
partner-add-dose = Aufwandmenge davon
partner-add-dose-hint = Leer gelassen, gilt die seines Etiketts.
partner-add-do = { $product } dazunehmen
partners-none-to-add = Kein anderes Etikett, das hier liegt, darf in diesen Tank.

jar-heading = Erst im Glas probieren
jar-outcome = Was zeigte das Glas?
jar-showed-fine = Es blieb gleichmäßig
jar-showed-heat = Es wurde warm
jar-showed-clumps = Klumpen oder Körner
jar-showed-layers = Schichten oder Schaum
jar-note = Weitere Worte, falls nötig
jar-do = Glasprobe festhalten

tick-all = { $n ->
    [one] Den letzten abhaken
   *[other] Alle { $n } übrigen abhaken
}
mix-partner-measured = { $product } abgemessen
checks-all = { $n ->
    [one] Die eine Prüfung mit Wert und Grenze
   *[other] Alle { $n } Prüfungen mit Wert und Grenze
}
check-rule = Regel: { $rule }.
