# The shelf: containers, what is left in them, and what a fill was taken from.

# Their days
container-past-label-day = Batch { $batch } had to be used up by { $limit }, says the label: it may not be used. Dispose of it as the label and local law say.
container-past-own-day = Batch { $batch } was to be used up by { $limit }. What has aged may work otherwise than its label says.
container-day-near = Batch { $batch } is to be used up by { $limit }, less than 30 days from now.
container-day-far = Batch { $batch } is to be used up by { $limit }.

# What is left
container-below-zero = By the book { $value } are left of batch { $batch }: more was taken than was in it. Look into the container and count it.
container-holds-less = By the book { $value } are left of batch { $batch }, and { $limit } are taken. Look into the container, or name another one as well.
container-holds-enough = By the book { $value } are left of batch { $batch }; { $limit } are taken.
container-low = Only { $value } are left of batch { $batch }, less than a tenth of what it held.
container-not-low = { $value } are left of batch { $batch }.
shelf-holds-less = The shelf holds { $value }, and { $limit } are wanted.
shelf-holds-enough = The shelf holds { $value }; { $limit } are wanted.

# The first screen
shelf-remark-expired = { $product }, batch { $batch }: past its last day, { $date }.
shelf-remark-below-zero = { $product }, batch { $batch }: by the book { $left } are left. Count it.
shelf-remark-low = { $product }, batch { $batch }: only { $left } left.

# What a fill was taken from
container-not-kept = This container is not on the shelf. Choose another one.
container-named-twice = Batch { $batch } is named twice. Put both amounts into one line.
container-of-another-product = Batch { $batch } holds another product. Choose a container of this one.
container-taken-out = Batch { $batch } was taken off the shelf. Put it back first, or choose another one.
container-amount-missing = Several containers are named. Say how much came from batch { $batch }.
container-of-another-kind = Batch { $batch } is kept by volume and was measured by mass, or the other way round. Correct the container’s size or the amount.
containers-do-not-add-up = From the containers came { $sum }, and { $measured } were measured. Correct one of the amounts.

# The form of a container
container-product-unknown = This product is not kept. Choose one that is.
container-product-fixed = Visits or counts name this container, so its product stays. Take it out, and keep the other product as a new container.
container-by-volume = This product is dosed by volume: write the amount in litres or millilitres.
container-by-mass = This product is dosed by mass: write the amount in kilograms or grams.
container-opened-in-the-future = This day is still to come. Write the day on which it was opened, or leave it empty.

# Counting
count-above-size = This is more than the container holds when full. Correct the amount, or the container’s size.
count-in-the-future = This day is still to come. Write the day on which it was counted.

# The record
thing-container = container
record-batch = From
batch-not-named = batch not named
deviation-passed-container-date = Passed with a reason: the container’s last day
