# Words of the shelf: its page, a container's form, counting, and which container a fill comes from.
shelf-heading = Shelf
shelf-lead = What stands in the shed and the van. Each fill is taken off the container it came from.
shelf-empty = No container is kept yet. Fills are then written down without a batch.
shelf-new = Add a container
shelf-left-of-product = May be used
shelf-batch = Batch { $batch }
shelf-left = left of { $size }
shelf-opened = Opened { $day }
shelf-open-unknown = Open
shelf-closed = Closed
shelf-use-by = Use up by { $day }
shelf-count = Count what is left
shelf-taken-out = Taken off the shelf ({ $n })
home-shelf = Wants a look on the shelf

# A container's form
shelf-container-heading = A container
shelf-container-product = What is in it
shelf-container-choose = Choose a product
shelf-container-batch = Batch
shelf-container-batch-hint = As printed on the container, often near its last day.
shelf-container-size = It holds, when full
shelf-container-opened = Opened on
shelf-container-opened-hint = Leave it empty while it is closed.
shelf-container-use-by = Use up by
shelf-container-use-by-hint = Only if a day is printed on it.
shelf-container-note = Worth knowing
shelf-container-keep = Keep this container
shelf-container-left = Left in it
shelf-container-out = Take it off the shelf
shelf-container-out-hint = When it is empty, given away or disposed of. Records keep its batch.
shelf-container-is-out = It was taken off the shelf. Records keep its batch.
shelf-container-back = Put it back
shelf-container-uses = What visits took ({ $n })
shelf-container-no-use = No visit has taken from it yet.
shelf-container-use = Fill { $fill }
shelf-container-use-counted = in the count
shelf-container-counts = What was counted ({ $n })
shelf-container-count-by = { $day }, { $by }
shelf-container-count-is = { $left } were in it, by the book { $reckoned }: a difference of { $difference }.
draft-of-container = A container
draft-of-count = A count on the shelf

# Counting
shelf-count-heading = What is left in it?
shelf-count-lead = Look into the container, or weigh it, before you look at the book.
shelf-count-left = Left in it now
shelf-count-left-hint = Nothing at all is 0.
shelf-count-book = By the book { $left } should be in it. The difference is kept with the count.
shelf-count-on = Counted on
shelf-count-by = Counted by
shelf-count-note = Worth knowing
shelf-count-note-hint = What was spilt, given away, or measured otherwise.
shelf-count-keep = Keep this count

# Where a fill comes from
mix-from = From which container?
mix-from-of = { $product }: from which container?
mix-from-left = { $left } left
mix-from-unnamed = Not from these
mix-from-unnamed-more = The record then says that no batch was named.
mix-from-several = From more than one container
mix-from-several-hint = { $wanted } are wanted. Say how much comes from each; leave the others empty.
mix-from-amount = From batch { $batch }
choose-on-shelf = { $left } on the shelf
