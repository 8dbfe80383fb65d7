# Der Bestand: Gebinde, was noch darin ist, und woraus eine Füllung kam.

# Their days
container-past-label-day = Die Charge { $batch } war laut Etikett bis { $limit } aufzubrauchen: Sie darf nicht verwendet werden. Entsorgen Sie sie, wie Etikett und Recht an Ihrem Ort es sagen.
container-past-own-day = Die Charge { $batch } war bis { $limit } aufzubrauchen. Was überlagert ist, kann anders wirken, als das Etikett sagt.
container-day-near = Die Charge { $batch } ist bis { $limit } aufzubrauchen, in weniger als 30 Tagen.
container-day-far = Die Charge { $batch } ist bis { $limit } aufzubrauchen.

# What is left
container-below-zero = Laut Buch sind von der Charge { $batch } noch { $value } da: Es wurde mehr entnommen, als darin war. Sehen Sie in das Gebinde und zählen Sie nach.
container-holds-less = Laut Buch sind von der Charge { $batch } noch { $value } da, und { $limit } werden entnommen. Sehen Sie in das Gebinde, oder nennen Sie ein weiteres.
container-holds-enough = Laut Buch sind von der Charge { $batch } noch { $value } da; { $limit } werden entnommen.
container-low = Von der Charge { $batch } sind nur noch { $value } da, weniger als ein Zehntel des vollen Gebindes.
container-not-low = Von der Charge { $batch } sind noch { $value } da.
shelf-holds-less = Im Bestand sind { $value }, gebraucht werden { $limit }.
shelf-holds-enough = Im Bestand sind { $value }; gebraucht werden { $limit }.

# The first screen
shelf-remark-expired = { $product }, Charge { $batch }: der letzte Tag war { $date }.
shelf-remark-below-zero = { $product }, Charge { $batch }: laut Buch noch { $left }. Zählen Sie nach.
shelf-remark-low = { $product }, Charge { $batch }: nur noch { $left }.

# What a fill was taken from
container-not-kept = Dieses Gebinde ist nicht im Bestand. Wählen Sie ein anderes.
container-named-twice = Die Charge { $batch } ist zweimal genannt. Schreiben Sie beide Mengen in eine Zeile.
container-of-another-product = Die Charge { $batch } enthält ein anderes Mittel. Wählen Sie ein Gebinde von diesem.
container-taken-out = Die Charge { $batch } wurde aus dem Bestand genommen. Stellen Sie sie erst zurück, oder wählen Sie eine andere.
container-amount-missing = Mehrere Gebinde sind genannt. Geben Sie an, wie viel aus der Charge { $batch } kam.
container-of-another-kind = Die Charge { $batch } wird nach Volumen geführt und wurde gewogen, oder umgekehrt. Berichtigen Sie die Größe des Gebindes oder die Menge.
containers-do-not-add-up = Aus den Gebinden kamen { $sum }, abgemessen wurden { $measured }. Berichtigen Sie eine der Mengen.

# The form of a container
container-product-unknown = Dieses Mittel ist nicht angelegt. Wählen Sie eines, das es ist.
container-product-fixed = Besuche oder Zählungen nennen dieses Gebinde, darum bleibt sein Mittel. Nehmen Sie es heraus, und legen Sie das andere Mittel als neues Gebinde an.
container-by-volume = Dieses Mittel wird nach Volumen dosiert: Geben Sie die Menge in Litern oder Millilitern an.
container-by-mass = Dieses Mittel wird nach Gewicht dosiert: Geben Sie die Menge in Kilogramm oder Gramm an.
container-opened-in-the-future = Dieser Tag kommt erst noch. Geben Sie den Tag an, an dem es geöffnet wurde, oder lassen Sie das Feld leer.

# Counting
count-above-size = Das ist mehr, als in das volle Gebinde passt. Berichtigen Sie die Menge oder die Größe des Gebindes.
count-in-the-future = Dieser Tag kommt erst noch. Geben Sie den Tag an, an dem gezählt wurde.

# The record
thing-container = Gebinde
record-batch = Entnommen aus
batch-not-named = Charge nicht genannt
deviation-passed-container-date = Mit Grund übergangen: der letzte Tag des Gebindes
