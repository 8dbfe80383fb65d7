# Worte der Seiten außerhalb eines Einsatzes: erste Seite, Anwender, Rasen, Spritzen, Notfall. Eine Einheit steht hier nie:
# Zahlen bringen ihre eigene mit.
app-name = Evensward
app-opening = Das Heft wird aufgeschlagen …
optional = Falls es das gibt.
caution = Evensward berät. Es entscheiden das Etikett, das Recht am Ort der Arbeit und der sachkundige Anwender.
page-back = Zurück
field-unit-of = Einheit von { $field }
advised = Empfohlen.
sums-open = Die Rechnung, offen gelegt

draft-restored = Es geht weiter mit dem, was Sie vorhin eingegeben haben.
draft-throw = Verwerfen
draft-of-lawn = Ein Rasen
draft-of-product = Ein Etikett
draft-of-kit = Eine Spritze
draft-of-calibration = Ein Auslitern mit Gehprobe
draft-of-cleaning = Eine Reinigung, noch nicht unterschrieben
draft-of-operator = Ich und mein Sachkundenachweis

trouble-again = Noch einmal versuchen
trouble-dismiss = Hinweis weglegen
failure-unreachable = Das Heft hat nicht geantwortet. Nichts ging verloren: Versuchen Sie es noch einmal. ({ $detail })
file-trouble-heading = Das Heft lässt sich nicht öffnen
file-damaged-more = Die beschädigte Datei kann die einzige Fassung Ihrer Aufzeichnungen sein. Sie wird beiseitegelegt, nie gelöscht, und eine neue wird begonnen. Heben Sie die beiseitegelegte Datei auf.
file-put-aside = Beiseitelegen und neu beginnen

# First start
first-heading = Wer spritzt und unterschreibt?
first-lead = Ihr Name und Ihr Sachkundenachweis stehen auf jeder Aufzeichnung. Danach kommt der erste Rasen.
first-go-on = Weiter zum ersten Rasen
first-lawn-lead = Noch steht hier nichts. Das kommt:
first-step-measure = Messen
first-step-measure-more = Ein Rasen mit Maßband, Messrad, Schritten oder Standort, ohne die Beete, mit allem, was daneben trocken bleiben muss.
first-step-label = Etikett abschreiben
first-step-label-more = Aufwandmenge, Wasser und Grenzen Ihres Mittels, so wie das Etikett sie nennt.
first-step-kit = Spritze prüfen
first-step-kit-more = Messbecher und Uhr: was Ihre Düse ausbringt und wie schnell Sie gehen.
first-step-plan = Planen und ansetzen
first-step-plan-more = Mittel nach Fläche, Wasser nach dem, was wirklich gegangen wird, Tank für Tank.
first-step-walk = Gehen
first-step-walk-more = Bahn für Bahn oder Durchgang für Durchgang, ein Tipp je Schritt, und immer im Blick, was noch bleibt.
first-step-record = Unterschreiben
first-step-record-more = Eine vollständige Aufzeichnung, der Zettel für den Kunden und das Wasser fürs nächste Mal.

# First page
home-heading = Rasenflächen
home-under-way = Im Gang: { $stage }
home-look-back-due = Nachschau fällig: { $day }
home-look-back-later = Nachschau am { $day }
home-begin = Einsatz beginnen
home-carry-on = Fortsetzen
home-carry-on-with = Fortsetzen: { $lawn }
home-look-back-at = Nachschau: { $lawn }
home-change-lawn = Rasen ändern
home-last-record = Letzte Aufzeichnung
home-new-lawn = Neuen Rasen messen
home-first-lawn = Ersten Rasen messen
home-first-product = Erstes Etikett abschreiben
home-first-kit = Ihre Spritze anlegen
home-first-calibration = Ihre Spritze auslitern
home-drafts = Noch nicht fertig
home-van = Im Wagen
home-n-products = { $n ->
    [0] noch keines
    [one] ein Etikett
   *[other] { $n } Etiketten
}
home-n-kits = { $n ->
    [0] noch keine
   *[other] { $n } angelegt, { $calibrated } ausgelitert
}

# Operator and device
me-heading = Ich und dieses Gerät
me-save = Meinen Namen behalten
operator-name = Ihr Name
operator-certificate = Nummer des Sachkundenachweises
operator-certificate-hint = So wie sie auf dem Nachweis steht.
operator-firm = Betrieb
operator-contacts = Wen Sie anrufen, wenn etwas passiert
operator-contacts-hint = Je eine Zeile: Name und Nummer. Giftnotruf, Betrieb, Notruf.
settings-heading = Dieses Gerät
settings-language = Sprache
settings-language-auto = Wie das Gerät
settings-language-en = English
settings-language-de = Deutsch
settings-customary = Auch in Meilen je Stunde, Pint und Yard
settings-customary-more = Neben jeder metrischen Zahl. Behalten und aufgezeichnet wird metrisch.
peek-on = Auch in mph, Pint und Yard
peek-off = Nur metrisch
settings-data = Alles bleibt auf diesem Gerät, in { $folder }. Nichts anderes schützt es als Sperre und Verschlüsselung des Geräts.

# Clients and lawns
client-name = Name des Kunden
client-address = Anschrift des Rasens
client-phone = Telefon
client-none = Kein Kunde
client-new = Ein neuer Kunde
lawn-heading-new = Rasen messen
lawn-heading-change = Rasen ändern
lawn-name = Wie Sie diesen Rasen nennen
lawn-name-hint = Etwa Vorgarten oder Rasen am Teich.
lawn-no-drawing = Der Rasen wird hier maßstäblich gezeichnet, sobald alle Längen da sind und stimmen.
lawn-drawn-before = So gezeichnet wie vorher: Erst ist unten etwas richtigzustellen.
lawn-show-wrong = Zeigen
lawn-net-area = Zu behandeln:
lawn-take-out = Beet oder Teich aussparen
lawn-add = Weitere Rasenfläche
lawn-sides = Was jenseits der Seiten liegt
lawn-sides-hint = Vorn ist die Kante, die Sie zuerst gemessen haben; links und rechts von dort gesehen. Ein Randstreifen bleibt trocken. Die Abstandsauflage des Etiketts zu Gewässern gilt von selbst. Am Wasser messen Sie bis zur Böschungsoberkante: Von dort zählt der Abstand.
lawn-doubt = Um wie viel kann die Fläche falsch sein?
lawn-doubt-hint = Nach eigenem Ermessen. Bei der höchsten Aufwandmenge des Etiketts zählt die kleinere Fläche.
lawn-whose = Wem der Rasen gehört
lawn-client = Kunde
lawn-save = Rasen behalten
part-first = Der Rasen
part-added = Weitere Fläche ({ $n })
part-taken-out = Ausgespart ({ $n })
part-remove = { $n } entfernen
part-what = Was ist es?
part-shape = Form
part-width = Breite, an der Vorderkante
part-length = Länge, von vorn nach hinten
part-a = Seite an der Vorderkante
part-b = Rechte Seite
part-c = Linke Seite
part-diameter = Ganz hinüber
part-radius = Von der Mitte bis zum Rand
part-angle = Öffnung
part-where = Wo es liegt
part-where-hint = Von der vorderen linken Ecke der ersten Form aus. Leer gelassen, liegt Rasen daneben und ein Beet in der Mitte.
part-at-x = Nach rechts von der Ecke
part-at-y = Von vorn nach hinten
shape-rectangle = Rechteck
shape-triangle = Dreieck
shape-circle = Kreis
shape-part_circle = Kreisausschnitt
taken-out-bed = Beet
taken-out-pond = Teich
taken-out-tree_ring = Baumscheibe
taken-out-path = Weg
taken-out-other = Etwas anderes
taken-out-margin = Randstreifen
side-rectangle-0 = Vorn
side-rectangle-1 = Rechts
side-rectangle-2 = Hinten
side-rectangle-3 = Links
side-triangle-0 = Vorn
side-triangle-1 = Rechts
side-triangle-2 = Links
side-circle-0 = Rand
side-part_circle-0 = Erste gerade Kante
side-part_circle-1 = Runde Kante
side-part_circle-2 = Zweite gerade Kante
side-beside-of = Was jenseits liegt: { $side }
sides-all = Jenseits aller { $n } Seiten
sides-all-differ = Nicht überall dasselbe
sides-all-margin = Randstreifen, der an allen trocken bleibt
sides-all-margin-set = An allen { $n } Seiten einhalten
sides-singly = Eine Seite nach der anderen ({ $n })
side-margin-of = Trockener Randstreifen: { $side }
beside-unknown = nicht nachgesehen
beside-nothing = nichts
beside-hedge = Hecke
beside-open_water = Gewässer
beside-neighbour = Nachbar
beside-food_plants = Essbares
beside-paving = Pflaster
beside-wall = Mauer
beside-drain = Ablauf
drawing-alt = Der Rasen maßstäblich gezeichnet, { $across } breit und { $deep } tief. { $dry ->
    [0] Darin muss nichts trocken bleiben.
    [one] Ein Stück, schraffiert, muss trocken bleiben.
   *[other] { $dry } Stücke, schraffiert, müssen trocken bleiben.
}
drawing-alt-strips = Der Rasen maßstäblich gezeichnet, { $across } breit und { $deep } tief, in { $strips } Bahnen, davon { $done } in diesem Durchgang gespritzt. { $dry ->
    [0] Darin muss nichts trocken bleiben.
    [one] Ein Stück, schraffiert, muss trocken bleiben.
   *[other] { $dry } Stücke, schraffiert, müssen trocken bleiben.
}

# Emergency
emergency-open = Notfall
emergency-heading = Notfall
emergency-close = Schließen
emergency-call = Anrufen
emergency-no-contacts = Noch sind keine Nummern eingetragen. Rufen Sie den Notruf des Landes an, in dem Sie sind. Ihre eigenen tragen Sie unter „Ich und dieses Gerät“ ein.
emergency-splash = Spritzer auf der Haut oder im Auge
emergency-splash-first = Halt. Nasses ausziehen. Mit viel sauberem Wasser spülen.
emergency-swallowed = Verschluckt
emergency-swallowed-first = Sofort anrufen, das Etikett in der Hand.
emergency-spill = Verschüttet
emergency-spill-first = Menschen und Tiere fernhalten. Nicht in Abläufe oder Gewässer gelangen lassen.
emergency-no-words = Es wurde kein Wortlaut abgeschrieben. Lesen Sie das Etikett.
emergency-read-out = Das lesen Sie am Telefon vor
emergency-authorisation = Nr. { $number }
emergency-no-products = Noch ist kein Etikett abgeschrieben. Lesen Sie das Etikett selbst vor.
emergency-general = Die fett gesetzten Worte sind allgemein üblich, ohne Quelle. Etikett und Sicherheitsdatenblatt gehen vor.

# A lawn of which a broken-off visit left a part untreated
unfinished-heading = Abgebrochen
unfinished-left = Noch zu behandeln: { $left }. Behandelt am { $day }: { $treated }.
unfinished-do = Den Rest behandeln
