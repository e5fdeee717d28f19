"""The tables of a binder file, named here and nowhere else.

The models belong to no database: a statement is bound to its binder when it is executed
(`Binder.all(query)`), so several files can be open at once, on several threads.
Every row that can travel has a `uid` (time-ordered UUID) and `changed`, milliseconds since 1970.
Days are ISO 8601 dates, moments ISO 8601 local date and time to the minute.
"""

from peewee import (
    AutoField,
    BigIntegerField,
    BlobField,
    BooleanField,
    FloatField,
    ForeignKeyField,
    IntegerField,
    Model,
    TextField,
)

APPLICATION_ID = 0x52424E44
"""Written into the header of each file: the letters RBND."""

SCHEMA_VERSION = 4
"""Number of the newest script in migrations/; kept in the file's user_version."""

SUFFIX = ".ringbound"


class TravellingRow(Model):
    """What every travelling row has."""

    id = AutoField()
    uid = TextField(unique=True)
    changed = BigIntegerField()


class Info(Model):
    """Facts about the binder itself: uid, name, colour, place on the shelf."""

    key = TextField(primary_key=True)
    value = TextField()

    class Meta:
        table_name = "info"


class Tab(TravellingRow):
    """A divider; `aside` is the moment it went into the drawer, or null."""

    name = TextField()
    kind = TextField()
    colour = TextField()
    place = FloatField()
    aside = TextField(null=True)

    class Meta:
        table_name = "tab"


class Leaf(TravellingRow):
    """A page. `also` holds the words of its structured parts, kept by triggers, for finding."""

    tab = ForeignKeyField(Tab, column_name="tab_id", index=False)
    kind = TextField()
    title = TextField()
    text = TextField(default="")
    also = TextField(default="")
    place = FloatField()
    day = TextField(default="")
    card = TextField(default="")
    aside = TextField(null=True)

    class Meta:
        table_name = "leaf"


class OfLeaf(TravellingRow):
    """A row that belongs to one leaf and goes with it."""

    leaf = ForeignKeyField(Leaf, column_name="leaf_id", index=False, on_delete="CASCADE")


class Version(OfLeaf):
    """An earlier state of a leaf; `text` is packed against the version before it, by id."""

    at = TextField()
    title = TextField()
    text = BlobField()

    class Meta:
        table_name = "version"


class Reading(OfLeaf):
    """What was asked and how it was laid; spread and titles are copies, as they were that day.

    `month` is the period a card was drawn for: '2026-12', '2026-W49' or '2026-12-05'; `put_off`
    counts how often its look back was asked for again later. `venue` is where it was laid,
    `photos` uids of kept pictures as JSON, `shown` how the layout is: '' both, 'layout' or 'list'.
    """

    at = TextField()
    zone = TextField(default="")
    question = TextField()
    topic = TextField(default="")
    querent = TextField(default="")
    deck = TextField(default="")
    deck_name = TextField(default="")
    titles = TextField(default="")
    spread = TextField()
    spread_copy = TextField()
    significator = TextField(default="")
    purpose = TextField(default="")
    month = TextField(default="")
    look_on = TextField(default="")
    look_state = TextField(default="")
    put_off = IntegerField(default=0)
    on_screen = BooleanField(default=False)
    mood = TextField(default="")
    venue = TextField(default="")
    photos = TextField(default="")
    shown = TextField(default="")

    class Meta:
        table_name = "reading"


class Placed(OfLeaf):
    """One card of a reading in its place; a later row of the same place clarifies the first."""

    n = IntegerField()
    label = TextField(default="")
    card = TextField()
    title = TextField()
    reversed = BooleanField(default=False)
    note = TextField(default="")

    class Meta:
        table_name = "placed"


class Expectation(OfLeaf):
    """What the reader says will happen; `sure` in per cent; `verdict` empty until judged."""

    place = FloatField()
    text = TextField()
    sure = IntegerField()
    due = TextField()
    verdict = TextField(default="")
    judged = TextField(default="")

    class Meta:
        table_name = "expectation"


class LookBack(OfLeaf):
    """What was written once events were known; `card` said it best."""

    at = TextField()
    text = TextField()
    card = TextField(default="")

    class Meta:
        table_name = "look_back"


class OwnWords(OfLeaf):
    """A dated version of the reader's own meaning; the latest of each way is the current one.

    Only the latest keeps its `text`; an earlier one is `packed` against the version before it.
    """

    card = TextField()
    way = TextField()
    text = TextField()
    at = TextField()
    packed = BlobField(null=True)

    class Meta:
        table_name = "own_words"


class Source(OfLeaf):
    """Bibliographic facts of a source leaf: citation key and CSL fields as JSON."""

    key = TextField()
    fields = TextField(default="{}")

    class Meta:
        table_name = "source"


class SourceNote(OfLeaf):
    """What one source says of a card under one aspect, with its locator."""

    card = TextField()
    source = TextField()
    aspect = TextField()
    text = TextField()
    locator = TextField(default="")
    place = FloatField(default=0.0)

    class Meta:
        table_name = "source_note"


class Deck(TravellingRow):
    """A deck the owner reads with; `titles` is DeckTitles as JSON."""

    name = TextField()
    titles = TextField()
    note = TextField(default="")
    favourite = BooleanField(default=False)
    aside = TextField(null=True)

    class Meta:
        table_name = "deck"


class DeckFace(TravellingRow):
    """The owner's picture of one card of a deck, by uids; `file` is '' once it was taken away."""

    deck = TextField()
    card = TextField()
    file = TextField()

    class Meta:
        table_name = "deck_face"


class OwnSpread(TravellingRow):
    """A spread of the owner's making; `spread` is Spread as JSON."""

    key = TextField()
    name = TextField()
    spread = TextField()
    aside = TextField(null=True)

    class Meta:
        table_name = "own_spread"


class Unit(TravellingRow):
    """A portion of the course; `cards` is a JSON list of card keys, `leaf` the uid of its leaf."""

    place = FloatField()
    name = TextField()
    cards = TextField(default="[]")
    starts = TextField(default="")
    ends = TextField(default="")
    aims = TextField(default="")
    leaf = TextField(default="")

    class Meta:
        table_name = "unit"


class Kept(TravellingRow):
    """A file kept inside the binder; equal files are kept once (by `sha256`)."""

    name = TextField()
    media = TextField()
    size = IntegerField()
    sha256 = TextField()
    data = BlobField()

    class Meta:
        table_name = "kept"


class LinkRule(TravellingRow):
    """A choice about card names: `rule` never or always, on one leaf or (empty) everywhere."""

    leaf = TextField(default="")
    word = TextField()
    rule = TextField()
    card = TextField(default="")

    class Meta:
        table_name = "link_rule"


class Recall(OfLeaf):
    """How well one thing asked about a card is known; the numbers are those of `reckon.memory`.

    `direction` is what is asked, `way` upright, reversed or ''. `last` and `due` are moments of
    universal time, so that neither travel nor summer time moves them.
    """

    card = TextField()
    direction = TextField()
    way = TextField(default="")
    stability = FloatField()
    difficulty = FloatField()
    state = IntegerField()
    step = IntegerField(null=True)
    last = TextField()
    due = TextField()

    class Meta:
        table_name = "recall"


class RecallAnswer(OfLeaf):
    """One answer of a recall round, `answer` from 1 (no idea) to 4 (at once); `at` as above."""

    card = TextField()
    direction = TextField()
    way = TextField(default="")
    answer = IntegerField()
    at = TextField()

    class Meta:
        table_name = "recall_answer"


class Field(OfLeaf):
    """One named field of a card leaf, as Markdown: keywords of each way, questions still open."""

    name = TextField()
    text = TextField()

    class Meta:
        table_name = "field"


class Imagery(OfLeaf):
    """A spot on a card's picture and what it is; x from the left, y from the top, 0 to 1.

    `deck` is the uid of the deck whose picture was marked, '' for the face drawn by the program.
    """

    card = TextField()
    deck = TextField(default="")
    x = FloatField()
    y = FloatField()
    text = TextField()
    place = FloatField(default=0.0)

    class Meta:
        table_name = "imagery"


class Pair(OfLeaf):
    """Two cards the reader sees together, and why; it belongs to the leaf of the first."""

    card = TextField()
    other = TextField()
    text = TextField(default="")

    class Meta:
        table_name = "pair"


class PageNote(OfLeaf):
    """A note beside one page, counted from 1, of a kept file shown on a handout leaf."""

    file = TextField()
    page = IntegerField()
    text = TextField()

    class Meta:
        table_name = "page_note"


class FiledText(OfLeaf):
    """The words of a kept file, for finding; a form feed stands between its pages."""

    file = TextField()
    text = TextField()

    class Meta:
        table_name = "filed_text"


class Printed(OfLeaf):
    """A moment at which a leaf was ticked off as printed and filed on paper."""

    at = TextField()

    class Meta:
        table_name = "printed"


MODELS: tuple[type[Model], ...] = (
    Info, Tab, Leaf, Version, Reading, Placed, Expectation, LookBack, OwnWords, Source,
    SourceNote, Deck, DeckFace, OwnSpread, Unit, Kept, LinkRule, Recall,
    RecallAnswer, Field, Imagery, Pair, PageNote, FiledText, Printed,
)  # fmt: skip
