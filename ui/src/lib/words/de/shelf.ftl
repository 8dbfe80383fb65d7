# Wörter des Regals: seine Seite, das Formular eines Behälters, das Zählen, und aus welchem Behälter eine Füllung kommt.
shelf-heading = Regal
shelf-lead = Was im Schuppen und im Wagen steht. Jede Füllung wird von dem Behälter abgezogen, aus dem sie kam.
shelf-empty = Noch ist kein Behälter eingetragen. Füllungen werden dann ohne Charge aufgeschrieben.
shelf-new = Behälter eintragen
shelf-left-of-product = Darf verwendet werden
shelf-batch = Charge { $batch }
shelf-left = übrig von { $size }
shelf-opened = Geöffnet { $day }
shelf-open-unknown = Offen
shelf-closed = Verschlossen
shelf-use-by = Aufzubrauchen bis { $day }
shelf-count = Zählen, was übrig ist
shelf-taken-out = Aus dem Regal genommen ({ $n })
home-shelf = Im Regal nachsehen

# Das Formular eines Behälters
shelf-container-heading = Ein Behälter
shelf-container-product = Was darin ist
shelf-container-choose = Produkt wählen
shelf-container-batch = Charge
shelf-container-batch-hint = Wie auf den Behälter gedruckt, oft nahe dem letzten Tag.
shelf-container-size = Er fasst, wenn er voll ist
shelf-container-opened = Geöffnet am
shelf-container-opened-hint = Leer lassen, solange er verschlossen ist.
shelf-container-use-by = Aufzubrauchen bis
shelf-container-use-by-hint = Nur wenn ein Tag aufgedruckt ist.
shelf-container-note = Wissenswert
shelf-container-keep = Behälter behalten
shelf-container-left = Darin übrig
shelf-container-out = Aus dem Regal nehmen
shelf-container-out-hint = Wenn er leer, weggegeben oder entsorgt ist. Aufzeichnungen behalten seine Charge.
shelf-container-is-out = Er wurde aus dem Regal genommen. Aufzeichnungen behalten seine Charge.
shelf-container-back = Zurückstellen
shelf-container-uses = Was Einsätze entnahmen ({ $n })
shelf-container-no-use = Noch kein Einsatz hat daraus entnommen.
shelf-container-use = Füllung { $fill }
shelf-container-use-counted = in der Zählung enthalten
shelf-container-counts = Was gezählt wurde ({ $n })
shelf-container-count-by = { $day }, { $by }
shelf-container-count-is = { $left } waren darin, nach dem Buch { $reckoned }: ein Unterschied von { $difference }.
draft-of-container = Ein Behälter
draft-of-count = Eine Zählung im Regal

# Zählen
shelf-count-heading = Was ist noch darin?
shelf-count-lead = Sehen Sie in den Behälter, oder wiegen Sie ihn, bevor Sie ins Buch sehen.
shelf-count-left = Jetzt darin übrig
shelf-count-left-hint = Gar nichts ist 0.
shelf-count-book = Nach dem Buch sollten { $left } darin sein. Der Unterschied wird mit der Zählung behalten.
shelf-count-on = Gezählt am
shelf-count-by = Gezählt von
shelf-count-note = Wissenswert
shelf-count-note-hint = Was verschüttet, weggegeben oder anders gemessen wurde.
shelf-count-keep = Zählung behalten

# Woher eine Füllung kommt
mix-from = Aus welchem Behälter?
mix-from-of = { $product }: aus welchem Behälter?
mix-from-left = { $left } übrig
mix-from-unnamed = Aus keinem von diesen
mix-from-unnamed-more = In der Aufzeichnung steht dann, dass keine Charge genannt wurde.
mix-from-several = Aus mehr als einem Behälter
mix-from-several-hint = { $wanted } werden gebraucht. Sagen Sie, wie viel aus jedem kommt; lassen Sie die anderen leer.
mix-from-amount = Aus Charge { $batch }
choose-on-shelf = { $left } im Regal
