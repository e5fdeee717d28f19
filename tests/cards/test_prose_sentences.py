"""Sentences that tell a card from the thing it is called after, with nothing else to go by.

{surface=key} names a card, {~surface} looks like one; a link on other words is wrong too.
"""

import pytest

from binder.cards.prose import Lexicon, find
from tests.cards.prose_corpus import OLDER, read_leaf

LITTLE_WORDS = """
I drew {~as} well as I could, and he turned up {~as} I was closing.
It was {~as} he said: he drew {~as} he spoke, and turned {~as} the bell struck.
Drew {as=swords-01}, {2c=cups-02}, {kp=pentacles-14}. Dull day.
Drew {as=swords-01} standing up in the cupboard.
On {~Sun} we rest. Saturday yes, {~Sun} no. {~Sun} 3 May. {~Sun} off.
The tower, R. said, is next: {~the tower}, R. said.
We drew {~0}-0 at home. Drew {0=major-00}. Lost {~3 w} since the scan.
My Friday: {Sun=major-19}, {4p=pentacles-04}, {star=major-17}.
{Wands 3=wands-03} on the dresser; Wands are fire.
{~Cups 3} for a pound. {~Swords 8} to 10.
{Q of C=cups-13}, I said, {kn of pents=pentacles-12} and {8 pents=pentacles-08}.
"""

NUMERALS = """
{~II}. Before the reading. Nothing yet.
See Vol. {~XII}, plate {~XIV}, Psalm {~XIX} and gathering {~IX}; volumes {~II} and {~III}.
Bed 4 pulled his {~IV} out. Factor {~VIII} and factor {~IX}, ward {~VIII}. Homer, {~XI}, 489-91.
King George {~V}, and Louis {~XIV}, and Henry {~VIII} with six.
New doctor, says {~XX} and looks at me.
Lay {XVI=major-16} beside {XVII=major-17}. {XIII=major-13} is kinder in daylight.
{I=major-01} to {V=major-05} by heart; then on to {XIII=major-13}. Acts {~I} to {~V}.
"""

BESIDE_OTHERS = """
What do you make of the {devil=major-15} beside the {six of cups=cups-06}?
The {lovers=major-06} fell across the {king of swords=swords-14}, which made me laugh.
The {sun=major-19} over the {Ten of Wands=wands-10}; the {world=major-21} and the {2w=wands-02}.
{Nine of Cups=cups-09} under {~the moon}, read by her light alone.
I laid the {Six of Cups=cups-06}; the second was the {star=major-17}.
He looked at {~the sun}. She said: {Ten of Cups=cups-10}!
I put down {the Ace of Swords=swords-01} and went out to look at {~the moon}.
My card, the {tower=major-16}, lies where it fell, the {moon=major-18} face up.
The {moon=major-18} fell out of the pack, and the {tower=major-16} is missing from the pack.
We watched {~the moon} from the deck.
I laid {the Ace of Cups=cups-01} down, and {~the moon} lay low.
Her birthday card: {~star}, balloon. Her card: {star=major-17}, {3w=wands-03}.
The clock struck {~XII} and read {~VII} on the old dial; {XII=major-12} is on the table.
"""

DRAWN = """
I drew the {hermit=major-09} this morning, and the {tower=major-16} tonight.
She drew the {hermit=major-09} this morning and the {star=major-17} last night.
I drew the {devil=major-15}, the {star=major-17} and the {tower=major-16}.
Why do I always get the {lovers=major-06}? They keep getting the {tower=major-16}.
Why do I get the {lovers=major-06} when I ask about the roof?
I asked about the roof and got the {tower=major-16}, if you please.
I turned the top card and it was the {moon=major-18}.
What crosses: {7 of cups=cups-07}. To do: the {hermit=major-09}. What comes: the {sun=major-19}.
Past {hermit=major-09}, present {star=major-17}, future {3 of cups=cups-03}.
Drew for it: {ks=swords-14}. Card for May: {temperance=major-14}.
He drew {~the moon} on the wall in chalk. I pulled {~the wheel} off the barrow.
I turned over {~the judgement} in my mind, and drew {~strength} from it.
We asked for {~the moon}, and got {~the sun}.
"""

SAID_OF_IT = """
The {chariot=major-07} reversed came up, and the {moon=major-18} again, reversed.
I looked at the {moon=major-18} in the pack, and put the {devil=major-15} back in the pack.
I had the {world=major-21} as my last card.
T for the {tower=major-16}, D for the {devil=major-15}; a ticket for {~the tower}.
I laid {The Star=major-17} by. {Lovers=major-06} still on my sill.
Two {Towers=major-16} in a week. There are {~two towers} in the town.
The {hierophant=major-05} has keys. The {hanged man=major-12} hangs by a foot.
"""

OTHER_THINGS = """
{~The Moon} was full, under a gibbous {~Moon}. {~The Sun} was out.
I dropped the pack. {~Fool}. {~April Fool} tomorrow. {~Fool}'s gold on the beach.
She is {~a high priestess} at the opera. {~The high priestess} at the opera sang flat.
At the fair they had {~a wheel of fortune} with teddies on it.
He did {~the three of wands} trick. Cut out {~the page of cups} in a catalogue.
We had supper at {~the Star}, went down to {~the Sun} for a pint, and looked at {the Star=major-17}.
They played the "{~Emperor}" concerto. {~The Temperance} movement met. {~The Tower} block is down.
Her brother {~Justice} has a cat {~Star}. {~Lovers}' tiff next door.
"""

SLIPS = """
the {Hangd Man=major-12}, the {Emperer=major-04}, the {Hierophent=major-05}, the {Charriot=major-07}
{Queen of Wnads=wands-13}, {Page of Pentacels=pentacles-11}, {Knigth of Swords=swords-12} r
{Sevn of Coins=pentacles-07}, {10 of swrods=swords-10}, {Knigt of Pents=pentacles-12}
Card: {Temperence=major-14}, {strenght=major-08}, the {high preistess=major-02}
{Eight-of-Wands=wands-08}, {5 of pents=pentacles-05}, {emporer=major-04} r
The strenght of it. Seen at a level, the livers loved a word; hinged levers, wold, weel.
"""

MIXED_PACKS = """
{Knave of Batons=wands-11}, {Valet of Chalices=cups-11}, {Cavalier of Disks=pentacles-12}
{The Juggler=major-01}, {the Popess=major-02}, {Page of Coins=pentacles-11}
"""


def said(text):
    found = find(text, Lexicon(OLDER))
    return [(bare(text[each.start : each.end]), each.key) for each in found]


def bare(surface):
    return surface[4:] if surface[:4].lower() == "the " else surface


@pytest.mark.parametrize(
    "line",
    [
        line
        for block in (
            LITTLE_WORDS,
            NUMERALS,
            BESIDE_OTHERS,
            DRAWN,
            SAID_OF_IT,
            OTHER_THINGS,
            SLIPS,
            MIXED_PACKS,
        )
        for line in block.strip().splitlines()
    ],
)
def test_the_sentence_tells_a_card_from_the_thing(line):
    leaf = read_leaf(line)
    meant = [(bare(leaf.text[start:end]), key) for start, end, key in leaf.mentions]
    assert said(leaf.text) == meant


def test_a_slip_keeps_every_place_in_step():
    text = "Temperence, the Hangd Man, then the Emperer and the Star; Queen of Wnads."
    assert [text[each.start : each.end] for each in find(text, Lexicon())] == [
        "Temperence",
        "the Hangd Man",
        "the Emperer",
        "the Star",
        "Queen of Wnads",
    ]


def test_a_word_of_an_own_title_is_no_slip():
    french = next(deck for deck in OLDER if deck.name == "Older French-style titles")
    assert said("Le Jugement") == [("Le Jugement", "major-20")]
    assert find("Le Jugement", Lexicon((french,)))


def test_a_banned_word_is_banned_however_it_is_spelt():
    assert find("Then Temperence reversed", Lexicon(banned=frozenset({"temperance"}))) == []


def test_what_is_named_far_away_does_not_make_an_opening_word_a_card():
    far = "Nothing else was said of it. " * 80
    near = "I laid Justice by the lamp. Justice, they say, is slow."
    assert len(find(near, Lexicon())) == 2
    assert len(find(near.replace(". Justice", f". {far}Justice"), Lexicon())) == 1
