# Worte des Etikettformulars und der Etikettlisten.
products-heading = Etiketten
products-lead = Jedes Etikett, wie Sie es abgeschrieben haben. Eine Änderung macht eine neue Fassung; alte Einsätze behalten ihre.
products-new = Etikett abschreiben
label-part = Etikett, Teil { $n } von { $of }
label-part-of = { $name }, Teil { $n } von { $of }
label-groups = Alle Teile des Etiketts
label-group-wrong = Hier nachsehen.
label-next = Weiter
label-before = Einen Teil zurück
label-save = Etikett behalten
label-if-stated = Nur wenn das Etikett es nennt.
label-same-as = Dieselbe Aufwandmenge, anders gesagt:
label-same-water = Dasselbe Wasser, anders gesagt:
label-seen-so = Ich habe noch einmal nachgesehen: So steht es auf dem Etikett

label-group-name = Was es ist
label-name = Name auf dem Etikett
label-legal-class = Was es rechtlich ist
label-legal-class-hint = Es steht auf dem Etikett, oft klein gedruckt. Ein Dünger darf nicht gegen Moos oder Unkraut eingesetzt werden.
legal-plant_protection = Pflanzenschutzmittel
legal-fertiliser = Düngemittel
legal-wetting_agent = Netzmittel
legal-other = Etwas anderes
label-authorisation-number = Zulassungsnummer
label-authorised-until = Zugelassen bis
label-use-up-by = Aufbrauchfrist bis
label-use-up-by-hint = Nur wenn zum Aufbrauchen von früher Gekauftem ein Ende gesetzt ist.

label-group-contents = Was darin ist
label-actives = Wirkstoffe
label-actives-hint = Wie das Etikett sie nennt, mit Gehalt. Zwei Mittel mit demselben zählen im Jahr als eines.
label-active-name = Wirkstoff { $n }
label-active-content = Gehalt von { $n }
label-active-add = Wirkstoff dazu
label-active-out = { $n } herausnehmen
label-analysis = Nährstoffe
label-analysis-hint = Die angegebenen Gehalte, wenn es düngt.
label-analysis-basis = Prozent wovon?
analysis-basis-ww = Der Masse
analysis-basis-wv = Masse je Volumen
nutrient-n = Stickstoff, N
nutrient-p = Phosphor
nutrient-k = Kalium
nutrient-fe = Eisen, Fe
nutrient-as = Angegeben als
nutrient-p-oxide = P₂O₅
nutrient-p-element = P
nutrient-k-oxide = K₂O
nutrient-k-element = K

label-group-use = Wofür es ist
label-situations = Wo das Etikett es erlaubt
label-situations-hint = Nur was das Etikett nennt. Nichts angehakt: Es nennt nichts.
label-hand-held = Handgeführte Geräte
label-hand-held-hint = Eine Rückenspritze mit Lanze ist ein handgeführtes Gerät.
by-hand-not-stated = Nicht genannt
by-hand-allowed = Erlaubt
by-hand-not_allowed = Nicht erlaubt
label-purposes = Wofür das Etikett es erlaubt
purpose-weeds = Unkraut
purpose-moss = Moos
purpose-feeding = Düngung
purpose-colour = Farbe
purpose-water = Wasser
purpose-disease = Krankheiten
purpose-pests = Schädlinge
purpose-growth = Wuchs
label-form = Form
form-liquid = Flüssig
form-crystals = Kristalle, aufgelöst
form-granules = Granulat oder Pulver
label-density = Gewicht eines Liters
label-density-hint = Nur wenn es nach Gewicht dosiert, aber im Becher gemessen wird.
label-kills-grass = Es tötet Gras
label-contains-iron = Es enthält Eisen
label-contains-iron-more = Es fleckt Pflaster, Kleidung und Schuhe.

label-group-dose = Die Aufwandmenge
label-dose = Aufwandmenge für diese Anwendung
label-dose-hint = Mittel je Fläche, nie je Tank. Geben Sie sie in der Einheit des Etiketts ein.
label-highest-dose = Höchste einzelne Aufwandmenge
label-highest-dose-hint = Oft dieselbe. Sie wird nie überschritten.
label-least-dose = Niedrigste Aufwandmenge
label-targets = Andere Aufwandmenge für ein anderes Ziel
label-targets-hint = Nur wenn das Etikett mehrere nennt. Die oben bleibt die Hauptmenge.
label-target-purpose = Zweck { $n }
label-target-words = Ziel { $n }, in den Worten des Etiketts
label-target-dose = Aufwandmenge { $n }
label-target-highest = Höchste einzelne Aufwandmenge { $n }
label-target-add = Aufwandmenge für ein Ziel dazu
label-target-out = Aufwandmenge { $n } herausnehmen
tag-statutory = Bindend
tag-advisory = Empfehlung
tag-own = Eigene Regel
tag-by-class = Wie seine Klasse es sagt
limit-whose = Wessen Grenze: { $limit }
limit-where = Wo es steht: { $limit }
limit-from-label = Das Etikett
limit-from-safety-sheet = Sicherheitsdatenblatt
limit-from-law = Das Gesetz
limit-from-code-of-practice = Leitfaden
limit-from-own = Eigene Einstellung

label-group-water = Das Wasser
label-water-hint = Wasser für alle Durchgänge eines Einsatzes zusammen.
label-water-min = Mindestens Wasser
label-water-max = Höchstens Wasser
label-highest-concentration = Höchste Konzentration

label-group-again = Wie oft
label-least-days = Mindestabstand zwischen zwei Behandlungen
label-most-per-year = Höchstzahl von Behandlungen im Jahr
label-most-amount = Höchstmenge im Jahr, je Fläche
label-year = Was ein Jahr ist
year-calendar = Kalenderjahr
year-rolling = Beliebige zwölf Monate

label-group-when = Wann und wann nicht
label-months = Monate, in denen das Etikett es erlaubt
label-months-hint = Keiner angehakt: Das Etikett nennt keine.
month-1 = Jan
month-2 = Feb
month-3 = Mär
month-4 = Apr
month-5 = Mai
month-6 = Jun
month-7 = Jul
month-8 = Aug
month-9 = Sep
month-10 = Okt
month-11 = Nov
month-12 = Dez
label-temperature = Temperatur
label-temp-min = Nicht unter
label-temp-max = Nicht über
label-young-turf = Nicht auf Rasen jünger als
label-young-turf-hint = Ab der Saat gezählt. Nur wenn das Etikett es nennt.
label-no-drought = Nicht bei Trockenheit

label-group-after = Betreten und Regen
label-keep-off = Nicht betreten
label-keep-off-hint = Leer, wenn das Etikett „bis es trocken ist“ sagt.
label-keep-off-words = Was das Etikett zum Betreten sagt
label-rain = Was das Etikett zu Regen sagt
rain-free_hours = Es muss trocken bleiben
rain-wanted = Regen oder Wässern ist erwünscht
rain-not_stated = Nichts
label-rain-hours = Regen
label-rain-hours-free_hours = Trocken für
label-rain-hours-wanted = Erwünscht binnen

label-group-mowing = Mähen
label-mow-before = Nicht gemäht, vorher
label-mow-after = Nicht gemäht, nachher
label-mowing-words = Was das Etikett zum Mähen sagt

label-group-margins = Gewässer
label-water-margin = Abstandsauflage, handgeführt
label-water-margin-hint = Ab der Böschungsoberkante.
label-water-margin-boom = Abstandsauflage mit Gestänge
label-water-margin-boom-hint = Nur wenn das Etikett eine andere nennt. Für eine Lanze zählt sie nicht.

label-group-mixing = Ansetzen
label-formulation = Formulierung
label-formulation-hint = Zwei Buchstaben, oft hinter dem Namen. Sie sagen, was zuerst in den Tank kommt.
label-formulation-not-stated = Nicht auf dem Etikett
label-formulation-wp = WP, Pulver zum Anteigen
label-formulation-wg = WG, Granulat, das zerfällt
label-formulation-wt = WT, Tabletten, die zerfallen
label-formulation-sp = SP, Pulver, das sich löst
label-formulation-sg = SG, Granulat, das sich löst
label-formulation-st = ST, Tabletten, die sich lösen
label-formulation-sc = SC, Suspension
label-formulation-cs = CS, Kapseln in Wasser
label-formulation-se = SE, Suspension und Emulsion
label-formulation-od = OD, Suspension in Öl
label-formulation-ec = EC, Öl, das eine Emulsion gibt
label-formulation-ew = EW, Emulsion in Wasser
label-formulation-me = ME, klare Emulsion
label-formulation-sl = SL, Flüssigkeit, die sich löst
label-formulation-gr = GR, Granulat zum Streuen
label-partners = Darf es mit anderen gemischt werden?
with-others-not-stated = Nicht genannt
with-others-allowed = Ja
with-others-forbidden = Nein
label-partners-words = Was das Etikett zum Mischen sagt
label-dissolves = Wie viel sich löst
label-dissolves-hint = Damit nicht mehr abgewogen wird, als das Wasser aufnimmt.
dissolves-not-stated = Nicht bekannt
dissolves-iron_sulphate_7 = Eisensulfatkristalle, wie veröffentlicht
dissolves-own = Meine eigene Tabelle
label-solubility = Meine eigene Tabelle
label-solubility-hint = Vom Etikett oder Sicherheitsdatenblatt: wie viel sich in einem Liter so kalten Wassers löst.
label-solubility-at = Wasser, Zeile { $n }
label-solubility-per-litre = Löst sich, Zeile { $n }
label-solubility-add = Zeile dazu
label-solubility-out = Zeile { $n } herausnehmen

label-limits = Jede abgeschriebene Grenze ({ $n })

label-group-protective = Schutzausrüstung
label-protective-hint = Schreiben Sie ab, was das Etikett verlangt. Der Umgang mit dem unverdünnten Mittel verlangt am meisten.
label-protective-mixing = Beim Umgang mit dem Mittel
label-protective-spraying = Beim Spritzen
label-protective-washing = Beim Waschen
protective-gloves = Handschuhe
protective-coverall = Schutzanzug
protective-boots = Gummistiefel
protective-face_shield = Gesichtsschutz
protective-glasses = Schutzbrille
protective-apron = Schürze
protective-respirator = Atemschutzmaske mit Filter

label-group-first-aid = Wenn etwas passiert
label-first-aid-hint = Schreiben Sie den Wortlaut von Etikett oder Sicherheitsdatenblatt ab. Er ist von jeder Seite aus einen Tipp weit weg, auch ohne Netz.
label-splash = Spritzer auf der Haut oder im Auge
label-swallowed = Verschluckt
label-spill = Verschüttet
label-hazard = Gefahrenhinweise

label-group-signed = Wer es abgeschrieben hat
label-version = Fassung oder Datum des Etiketts
label-version-hint = Darauf gedruckt, damit Sie sehen, wenn es sich geändert hat.
label-entered-by = Vom Etikett abgeschrieben durch
label-entered-on = Am

# The second look and the limits as they are listed
second-look-dose = { $hundred } sind { $hectare }: Sagt das Etikett dasselbe?
limit-is = { $limit }
limit-allowed = erlaubt
limit-not-allowed = nicht erlaubt
limit-not-in-drought = nicht bei Trockenheit
no-such-month = Monate sind Zahlen von 1 bis 12: Wählen Sie sie noch einmal.
label-temperatures-reversed = Die höchste Temperatur liegt nicht über der niedrigsten: Sehen Sie noch einmal aufs Etikett.
formulation-unknown = { $code } ist keine der hier bekannten Abkürzungen aus zwei Buchstaben: Sehen Sie auf dem Etikett hinter den Namen des Mittels.
number-too-large = Das ist zu viel: höchstens { $limit }.
target-dose-above-its-highest = Diese Aufwandmenge liegt über ihrer eigenen höchsten, oder eine ist ein Volumen und die andere ein Gewicht: Sehen Sie noch einmal aufs Etikett.
analysis-above-hundred = Zusammen ist das mehr als das Mittel selbst: Sehen Sie noch einmal aufs Etikett.

# Turf that a label names
lawn = ein Rasen
amenity_turf = gepflegtes öffentliches Grün
sports_turf = Sportrasen
other_turf = anderer Rasen

# The rest of a lawn, a visit that only looks back, slips of the pen, and the second look
rest-measured-anew = Der Rasen wurde seither anders gemessen: Niemand weiß, wo der Rest liegt. Behandeln Sie den Rasen neu, wenn der Mindestabstand es erlaubt.
rest-unknown = Niemand weiß, welchen Boden jener Einsatz behandelt hat: Sein Rest lässt sich nicht davon unterscheiden.
looked-back-only = Nachschau des letzten Einsatzes; nichts wird behandelt.
looked_back = nur Nachschau
look-at-the-dose-again = Sehen Sie noch einmal aufs Etikett, und haken Sie ab, dass es dieselbe Aufwandmenge nennt.
slip-dose = { $value } liegt außerhalb dessen, was das Etikett selbst nennt: War { $meant } gemeint?
slip-water = Wasser von { $value } ist zu Fuß ungewöhnlich oder weit weg von der anderen Angabe des Etiketts: War { $meant } gemeint?
slip-concentration = Die Konzentration des Etiketts von { $value } passt nicht zu Aufwandmenge und Wasser, die { $meant } ergeben: Sehen Sie noch einmal aufs Etikett.
dose-above-highest-for-target = { $value } ist mehr als die höchste Aufwandmenge des Etiketts für diesen Zweck, { $limit }.
dose-fine-for-target = Nicht mehr als die höchste Aufwandmenge des Etiketts für diesen Zweck, { $limit }.
rest-finished-already = Der Rest jenes Einsatzes ist schon behandelt.
dose-above-highest-for-some-target = { $value } ist mehr als die höchste Aufwandmenge des Etiketts für eines der Ziele dieses Zwecks, { $limit }: Sehen Sie nach, welches gemeint ist.

# Die Fassungen eines Etiketts
label-versions = Fassungen dieses Etiketts
label-versions-lead = Jede Fassung bleibt, wie sie abgeschrieben wurde, und ebenso die Aufzeichnungen, die sich auf sie stützen.
label-versions-to-label = Etikett öffnen
label-version-n = Fassung { $n }
label-version-current = Gilt jetzt: Neue Einsätze nehmen diese.
label-version-old = Eine ältere Fassung, zum Lesen. Neue Einsätze nehmen eine spätere.
label-version-copied = Abgeschrieben von { $by } am { $on }.
label-version-kept = Hier seit { $on }.
label-version-same = In jedem Feld wie die Fassung davor.
label-version-changes = { $n ->
    [one] Eines hat sich geändert
   *[other] { $n } Dinge haben sich geändert
}
label-version-was = Vorher: { $was }
label-version-was-not-stated = Vorher: nicht angegeben
label-version-not-stated = Nicht angegeben
label-version-visits = { $n ->
    [one] Ein Einsatz stützt sich darauf
   *[other] { $n } Einsätze stützen sich darauf
}
label-version-no-visit = Kein Einsatz stützt sich darauf.
label-version-visit-open = läuft noch
label-copied-on = Abgeschrieben am
label-air-not-below = Luft, nicht unter
label-air-not-above = Luft, nicht über
label-rain-for = Trocken, oder Regen erwünscht, für
