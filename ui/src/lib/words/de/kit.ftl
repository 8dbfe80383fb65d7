# Spritzen, Auslitern, Reinigung: was die Prüfungen und die Formulare sagen.

## Sources
nozzle-wear-extension = Beratung (Universität von Nebraska): höchstens 10 % neben dem Nenndurchfluss
directive-2009-128-article-8 = Regelmäßige Gerätekontrolle, Richtlinie 2009/128/EG, Artikel 8 (aus dem Gedächtnis); alle zwölf Monate ist allgemein üblich
half-rate-rule = Halbwertregel für auslaufende Fächer (Ohio State University, Bulletin 817)

## What was last in the sprayer
cleaning-not-signed = Zuletzt war etwas darin, das Gras tötet. Es ist als gereinigt abgehakt, aber niemand hat dafür unterschrieben. Unterschreiben Sie erst die Reinigung.
sprayer-held-the-same = { $product } war zuletzt darin, dasselbe wie jetzt, und seither wurde nicht gereinigt. Sehen Sie nach alter Brühe, bevor Sie füllen.
cleaning-owed-before-another = { $product } war zuletzt darin, und seither wurde nicht gereinigt. Reinigen Sie, bevor ein anderes Mittel hineinkommt.
cleaning-owed-unknown = Reinigen Sie sie: Niemand weiß, was zuletzt darin war.
cleaning-owed-and-signed = Reinigen Sie und unterschreiben Sie dafür: Zuletzt war etwas darin, das Gras tötet.
cleaning-owed-signature = Unterschreiben Sie die Reinigung: Zuletzt war etwas darin, das Gras tötet.
cleaning-owed-product = Reinigen Sie, bevor ein anderes Mittel hineinkommt.
clean-wear = Ziehen Sie an, was das Etikett des letzten Mittels fürs Waschen verlangt.
clean-empty = Spritzen Sie den Rest dort aus, wo jenes Etikett es erlaubt. Nie in einen Ablauf, einen Graben oder auf Pflaster.
clean-rinse = Füllen Sie ein Fünftel bis ein Viertel klares Wasser ein, schütteln Sie, und spritzen Sie es durch die Lanze aus, wo das Etikett es erlaubt.
clean-step-agent = Füllen Sie noch einmal mit dem Reinigungsmittel, das das Etikett nennt, lassen Sie es so lange stehen, wie es sagt, und spritzen Sie es aus.
clean-parts = Nehmen Sie Düse, Sieb und Filter ab und waschen Sie sie einzeln.
clean-again = Spülen Sie noch zweimal mit klarem Wasser, dreimal im Ganzen, durch Schlauch und Lanze.
clean-outside = Waschen Sie Tank, Gurte und Lanze von außen, auf Boden, der das Wasser aufnimmt.
clean-step-sign = Unterschreiben Sie, dass es getan ist.
cleaned-with-agent = { $rinses ->
    [one] Einmal gespült, mit einem Reinigungsmittel. { $words }
   *[other] { $rinses } Mal gespült, mit einem Reinigungsmittel. { $words }
  }
cleaned-with-water = { $rinses ->
    [one] Einmal mit klarem Wasser gespült. { $words }
   *[other] { $rinses } Mal mit klarem Wasser gespült. { $words }
  }
cleaning-in-the-future = Dieser Tag kommt erst noch. Geben Sie den Tag der Reinigung an.
rinses-too-few = Spülen Sie mindestens { $limit } Mal, dann unterschreiben Sie.
sign-the-cleaning-first = Zuletzt war etwas darin, das Gras tötet. Reinigen Sie und unterschreiben Sie erst dafür, dann ändern Sie dies.

## Calibration
calibration-kit-unknown = Mit welcher Düse und welchem Druck das gemessen wurde, ist nicht festgehalten. Messen Sie bei Gelegenheit neu.
calibration-kit-same = Gemessen mit Düse, Druck und Arbeitsbreite, die die Spritze jetzt hat.
calibration-ended-by-nozzle = Die Spritze hat seit der Messung eine andere Düse. Messen Sie neu.
calibration-ended-by-pressure = Die Spritze arbeitet mit anderem Druck oder Ventil als bei der Messung. Messen Sie neu.
calibration-ended-by-swath = Arbeitsbreite, Höhe oder Spritzwinkel sind seit der Messung anders. Messen Sie neu.
calibration-ended-by-later = Es wurde später neu gemessen.
calibration-once = Gemessen: { $value ->
    [one] einmal
   *[other] { $value } Mal
  }. Drei Becher und drei Gänge sagen mehr. Messen Sie bei Gelegenheit neu.
catches-apart = Ein Becher weicht { $value } vom Mittel ab; bis { $limit } ist gut. Messen Sie neu.
walks-apart = Ein Gang weicht { $value } vom Mittel ab; bis { $limit } ist gut. Gehen Sie neu.
walks-not-loaded = Die Gänge wurden nicht mit voller Spritze auf dem Rücken gemacht. Mit ihr gehen Sie langsamer.
calibration-repeats-agree = Becher und Gänge stimmen überein: Der schlechteste Becher weicht { $value } vom Mittel ab.
nozzle-sound = Die Düse weicht { $value } vom Nennwert { $nominal } bei diesem Druck ab: gut.
nozzle-worn = Die Düse bringt { $value } mehr aus als den Nennwert { $nominal } bei diesem Druck. Sie ist verschlissen: Ersetzen Sie sie.
nozzle-low = Die Düse liegt { $value } neben dem Nennwert { $nominal } bei diesem Druck. Reinigen Sie sie, sehen Sie nach dem Druck und messen Sie neu, oder ersetzen Sie sie.
two-ways-agree = Becher und Gang stimmen mit der Probefläche überein: { $value } auseinander.
two-ways-disagree = Becher und Gang weichen { $value } von der Probefläche ab; bis { $limit } ist gut. Machen Sie beides neu.
sprayer-check-unknown = Niemand hat festgehalten, wann die Spritze zuletzt durchgesehen wurde. Sehen Sie nach Lecks, Gurten, Schlauch, Ventil und Sieben.
sprayer-check-in-the-future = Die Durchsicht der Spritze trägt ein Datum in der Zukunft. Berichtigen Sie den Tag.
sprayer-checked = Die Spritze wurde am { $value } durchgesehen.
sprayer-check-due = Die Spritze wurde zuletzt am { $value } durchgesehen, vor mehr als { $limit } Monaten. Sehen Sie nach Lecks, Gurten, Schlauch, Ventil und Sieben.
swath-within-pattern = Die Arbeitsbreite von { $value } liegt innerhalb der { $limit }, die der Fächer hergibt.
swath-wider-than-pattern = Die Arbeitsbreite von { $value } ist größer als die { $limit }, die der Fächer hergibt: Es blieben Streifen. Messen Sie sie auf trockenem Pflaster.

## The forms
nozzle-size-unknown = Eine Düsengröße { $size } gibt es hier nicht. Wählen Sie eine, oder geben Sie Durchfluss und Druck des Herstellers an.
needed-for-the-spacing = Die Arbeitsbreite aus Höhe und Winkel braucht das.
spacing-not-believed = Höhe und Winkel ergeben eine Arbeitsbreite von { $value }. Sehen Sie beides noch einmal an.
measure-at-least-once = Geben Sie mindestens eine Messung an.
catches-too-few = Zum Auslitern gehören { $limit } Becher.
walks-too-few = Zur Gehprobe gehören { $limit } Gänge.
walk-with-the-sprayer-full = Gehen Sie mit voller Spritze auf dem Rücken, dann haken Sie das ab.
catch-once-more = Ein Becher weicht { $value } vom Mittel ab; bis { $limit } ist gut. Fangen Sie neu auf, oder berichtigen Sie den falschen.
walk-once-more = Ein Gang weicht { $value } vom Mittel ab; bis { $limit } ist gut. Gehen Sie neu, oder berichtigen Sie den falschen.
kit-passes-out-of-range = Fragen Sie nach 1 bis { $limit } Durchgängen.
