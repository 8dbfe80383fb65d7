# Die Brühe: das Wasser, was sich darin löst, mehrere Mittel in einem Tank, die Reihenfolge der Zugabe.

# The operator's own table of what dissolves
solubility-empty = Geben Sie mindestens eine Zeile ein: eine Temperatur und wie viel sich dabei in einem Liter Wasser löst.
solubility-not-above-zero = Wie viel sich löst, muss über null liegen.
solubility-temperature-twice = Zwei Zeilen gelten für { $temperature }. Behalten Sie eine davon.

# When a product goes into the tank
adding-dry = Spritzpulver, zerfallendes Granulat und was sonst trocken ist
adding-flowable = flüssige Suspensionen
adding-emulsion = Emulsionen
adding-solution = Lösungen und Netzmittel

# Sources
iron-sulphate-table = Löslichkeit von Eisen(II)-sulfat als wasserfreies Salz, umgerechnet auf die Kristalle mit ihrem Wasser

# Steps that can be taken back
step-partner-chosen = Ein Mittel für denselben Tank
step-partner-left-out = Ein Mittel weggelassen
step-water-seen = Das Wasser angesehen
step-jar-tested = Die Glasprobe

# The water
iron-and-water-ph = Hinweis eines Düngerherstellers zu Eisen und dem pH des Wassers
from-memory = Aus dem Gedächtnis, keine Quelle gesehen
water-not-looked-at = Sehen Sie nach dem Wasser: woher es kommt, wie warm es ist, pH und Härte, soweit Sie sie kennen.
water-not-seen = Noch hat niemand nach dem Wasser gesehen.
water-ph-unknown = Der pH des Wassers ist nicht bekannt. In alkalischem Wasser wird Eisen zu Rost und geht verloren: auflösen, durchs Sieb gießen und frisch verbrauchen.
water-alkaline = Dieses Wasser ist alkalisch, und Eisen wird darin zu Rost: auflösen, durchs Sieb gießen und frisch verbrauchen, ohne Warten.
water-ph-fine = Eisen bleibt in diesem Wasser gelöst.
water-hardness-unknown = Die Härte des Wassers ist nicht bekannt. Hartes Wasser ist fast immer alkalisch.
water-hard = Dieses Wasser ist hart. Eisen fällt darin aus: auflösen, durchs Sieb gießen und frisch verbrauchen.
water-soft = Dieses Wasser ist weich genug.

# What dissolves
solubility-not-known = Wie viel { $product } sich löst, ist nicht bekannt. Lösen Sie es in { $water } auf, und sehen Sie nach, dass nichts am Boden bleibt, bevor es weitergeht.
water-temperature-unknown = Wie warm das Wasser ist, entscheidet, wie viel { $product } sich in { $water } löst. Messen Sie es.
temperature-outside-table = Die Tabelle für { $product } reicht von { $coldest } bis { $warmest }, und das Wasser hat { $temperature }: Wie viel sich in { $water } löst, ist nicht bekannt.
does-not-dissolve = { $value } { $product } lösen sich nicht in { $water } bei { $temperature }: Höchstens gehen { $limit }, und Sie lägen bei { $percent }. Nehmen Sie mehr oder wärmeres Wasser, oder machen Sie mehr Füllungen.
dissolves-barely = { $product } liegt bei { $percent } dessen, was { $water } bei { $temperature } aufnehmen kann. Rühren Sie lange, und gießen Sie es durch ein Sieb.
dissolves = { $product } löst sich: { $percent } dessen, was { $water } bei { $temperature } aufnehmen kann.

# Partners
tank-mix-guidance = Rat zu Tankmischungen, Sprayers101
too-many-products = Das wären { $value } Mittel in einem Tank; geraten wird zu höchstens { $limit }.
number-of-products-fine = { $value } Mittel teilen sich den Tank.
partners-allowed = Das Etikett von { $product } erlaubt das Mischen mit einem anderen Mittel.
partners-forbidden = Das Etikett von { $product } verbietet das Mischen mit einem anderen Mittel.
partners-not-stated = Das Etikett von { $product } sagt nichts zum Mischen. Fragen Sie den Hersteller, bevor Sie mischen.
partners-share-an-active = { $product } und { $other } enthalten beide { $active }: Was ihre Etiketten davon erlauben, zählt zusammen. Rechnen Sie es zusammen, bevor Sie mischen.
partner-is-the-product = Das ist das Mittel des Einsatzes selbst. Wählen Sie ein anderes für denselben Tank.
adding-order-line = { $name }: { $group ->
    [adding-dry] mit allem, was trocken ist
    [adding-flowable] mit flüssigen Suspensionen
    [adding-emulsion] mit Emulsionen
    [adding-solution] mit Lösungen und Netzmitteln
   *[other] Formulierung nicht eingetragen: danach, wie es aussieht
  }.
adding-not-known = Formulierung nicht eingetragen

# The jar test
jar-test-guidance = Utah State University Extension, zur Glasprobe
jar-test-owed = Probieren Sie die Mittel erst in einem Glas, und sagen Sie, was es zeigte.
jar-not-tested = Die Mittel wurden nicht in einem Glas probiert.
jar-fine = Das Glas blieb gleichmäßig.
jar-heat = Das Glas wurde warm: Diese Mittel vertragen sich nicht.
jar-clumps = Das Glas zeigt Klumpen oder Körner: Diese Mittel vertragen sich nicht.
jar-layers = Das Glas zeigt Schichten oder Schaum: Diese Mittel vertragen sich nicht.
jar-water = Ziehen Sie an, was das Etikett verlangt. Einen halben Liter des Wassers, das Sie nehmen, in ein klares Glas.
jar-add = Dann { $amount } { $name }, und umrühren.
jar-shake = Verschließen und zehnmal umdrehen.
jar-stand = 15 Minuten stehen lassen.
jar-look = Fühlen Sie, ob es warm ist, und sehen Sie nach Klumpen, Körnern, Schichten oder Schaum.
jar-empty = Ist es gut, in den Tank leeren; sonst ist es Abfall wie das Mittel selbst.

# Steps with the product’s name, where several share the tank
mix-measure-liquid-of = Messen Sie { $product } { $name } im Messbecher ab, auf Augenhöhe.
mix-weigh-of = Wiegen Sie { $product } { $name } ab.
mix-dissolve-and-strain-of = Lösen Sie { $name } in einem Eimer Wasser auf und gießen Sie es durch ein Sieb.
mix-make-paste-of = Rühren Sie { $name } mit wenig Wasser zu einem Brei an.
mix-pour-product-of = Gießen Sie { $name } in den Tank.
mix-rinse-measure-of = Spülen Sie das Messgefäß von { $name } dreimal in den Tank aus; eine leere Packung ebenso.
mix-agitate-before-next = Schütteln Sie, bis die Brühe gleichmäßig ist, bevor das nächste Mittel hineinkommt.
all-ticked-already = Das ist alles abgehakt.

# Equipment at the concentrate
concentrate-guidance = Das unverdünnte Mittel ist der gefährlichste Teil der Arbeit
mixing-lacks-piece = Das Etikett verlangt { $piece ->
    [gloves] Handschuhe
    [coverall] einen Schutzanzug
    [boots] Gummistiefel
    [face-shield] einen Gesichtsschutz
    [glasses] eine Schutzbrille
    [apron] eine Schürze
    [respirator] eine Atemschutzmaske
   *[other] ein Stück
  } beim Gehen und nicht beim Ansetzen. Tragen Sie es auch beim unverdünnten Mittel.

# Passed with a reason, in the record
deviation-passed-dissolving = Mit Grund übergangen: mehr, als das Wasser löst
deviation-passed-jar-test = Mit Grund übergangen: was das Glas zeigte
deviation-passed-partners = Mit Grund übergangen: die Zahl der Mittel in einem Tank
deviation-passed-partner-label = Mit Grund übergangen: was ein Etikett zum Mischen sagt

# The checks in the record
record-checks = Unterwegs geprüft, mit Befund, Grenze und wessen Grenze es ist

# The mixture in the record
record-partner = Im selben Tank
record-mix-water = Das Wasser zum Ansetzen
record-water-source = Von
record-water-ph = pH
record-water-hardness = Härte, als Calciumcarbonat
record-water-temperature = Temperatur
record-water-bucket = Aufgelöst in
record-jar-test = Die Glasprobe
record-jar = Sie zeigte
jar-outcome-fine = nichts, es blieb gleichmäßig
jar-outcome-heat = Wärme
jar-outcome-clumps = Klumpen
jar-outcome-layers = Schichten
record-worn-mixing = Getragen bei jeder Füllung
record-worn-washing = Getragen beim Waschen
