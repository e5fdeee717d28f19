"""Word lists and expressions for what stands around numerals, ranks and shorthand; no decisions.

They are matched as those of `clues` are, and come from the same practice.
"""

import re

_PIECE = re.IGNORECASE | re.VERBOSE

MEASURED = re.compile(
    r"""[. ]?[ \n]?(?:ago|later|old|left|bulbs?|lamps?|led|watts?|a|per|each|of|or[ \n]so|off|pm|am|
    for|since|until|till|on[ \n]the|in[ \n]change|wind|and[ \n]a[ \n]half|pieces?|coins?|to|more|
    less|(?:is|was)[ \n](?:(?:not|never|too)[ \n])?(?:enough|plenty|much|little)|\d+d)\b|[%°]""",
    _PIECE,
)
"""'3w ago', '5p a pound', '10s on the timer'."""

NUMERAL_AHEAD = re.compile(
    r"\W{1,4}(?:and )?(?:[IVX]{2,5}\b|[A-Z][a-z])|(?: to |–)(?:[VX]|[IVX]{2,5})\b"
)
ACE_AHEAD = re.compile(
    r"""(?:['’]s)?(?![\w'’@\\-])(?:\W{0,9}\Z|[ ]?[^\w\s]|\s{1,9}(?:r|rx|rev|reversed|upright|
    inverted|upside|on|again|today|tonight|yesterday|then|\w{2,}ing)\b|\s*\n)""",
    _PIECE,
)
"""What must follow a little word for it to be a card at all."""

RANGE_AHEAD = re.compile(r"[*_]*(?: to (?:the )?|–)[*_]*[IVX]{1,5}(?![\w'’])")
RANGE_BEHIND = re.compile(r"\b[IVX]{1,5}[*_]*(?: to (?:the )?|–)[*_]*$")
"""'I to V', from either end."""

MORE_NUMERALS = re.compile(r"[ivxlc]*[.,;]?|and|or|to|&|[-–]")
"""What may stand between a label and a numeral: 'volumes II and III'."""

CITED = re.compile(r"[.,]?[ ](?:(?:no|pp?|ch)[.][ ]?)?\d+(?:[-–]\d+)?(?:[.,;)\n]|$)", _PIECE)
"""'III, 37'."""

ORDINAL = re.compile(r"(?:1st|2nd|3rd)", re.IGNORECASE)
OLD_MONEY = re.compile(r"\d{1,2}s?[.]?[ ]?$")
"""'7s. 6d'."""
THING_AFTER = re.compile(r"[ \n](?:and|or|nor|but|with|in[ \n](?:old|cash|change|coin))\b")
"""After a sum: '10s and his dinner'."""
DIMENSIONS = re.compile(r"[ \n][a-z]{3}")

HEADING_AFTER = re.compile(r"[.)][ \n][^\W_]")
"""'II. Before the reading'."""

SCORED = re.compile(r"[-–—:.,/%°]\d|[%°]|[ ]?[-–—][ ]?\d")
"""'drew 0-0'."""

IN_A_BOOK = re.compile(
    r"""[ \n](?:in|from|of)[ \n](?:the|an?|my|her|his)[ \n]
    (?:\w+[ \n])?(?:catalogue|sketchbook|book|album|ledger|magazine|paper)\b""",
    _PIECE,
)
"""'the page of cups in a catalogue'."""

DIAL_AFTER = re.compile(r"[ \n]on[ \n]the[ \n](?:\w+[ \n])?(?:dial|clock|sundial|gauge)\b")
"""'the clock struck XII', 'XII on the dial'."""

TRICK = re.compile(r"[ \n]tricks?\b")

COUNTED_ON = re.compile(
    r"[.,:/x×%-]?\d|[ ]?(?:[-–—/x×+]|to|or|and|of|in|per|for|each)[ ]?\d|[ ](?:of|per|each|an?)\b"
)
"""'Wands 3 of 4'."""

COURT_OF = re.compile(r"(?:[qQ]|[kK]n|[kK]t|[pP]g)\s+of\s+\w")

ACE_AFTER = re.compile(
    r"""[ \n](?:(?!th|being|having|during|follow|noth|anyth|someth|everyth|even|morn)\w{2,}ing|
    again|today|tonight|yesterday|then)\b""",
    _PIECE,
)
"""After 'drew as': seldom said after the little word."""


def _set(words: str) -> frozenset[str]:
    return frozenset(words.split())


PAGES = _set("a an one each every another whole half last first next second third this")
"""'a page of cups' in a sketch pad."""
MEASURES = _set(
    "last past next about for every within after only some over under cost costs paid pay a is was"
    " had wage wages earned earns earn lent borrowed owes owed spent worth bus bay route"
    " than by from to at of took takes another another's £ $ €"
)
NUMBERED_BY = _set(
    "century centuries drip drips line lines fluids antibiotics bag bags pole pump edition form"
    " corps"
)
LABELS = _set(
    "act appendix article band battle bay book box canto cap catalogue category chapter class"
    " clause column company cone course day diagram division drawing drum exercise factor fig"
    " figure file fol folio form gathering grade group guide house issue item king leaf lecture"
    " lesson letter level line lot mark meeting model month channel nerve no nos note number"
    " page paper para paragraph parcel part phase pl plate point pope proof psalm question quire"
    " report room row scene section series session sheet signature squadron stage step tab table"
    " term tome type unit verse vol volume war ward week world year century"
)
"""Before a numeral these, or many of them, say what it counts."""
SHORT_LABELS = _set(
    "vol vols ch chap chaps cap pt pts sec sect no nos fig figs pl pls bk bks lib fol ff art ps pss"
    " p pp op para par app tab"
)
"""The same cut short, with a point."""
CLOCKS = _set("clock dial sundial gauge struck past o'clock")
OWNERS = _set("a an his her their your its our")
SPOKEN = _set("says said saying marked stamped lettered scrawled dated")
COMMON_SUITS = ("cups", "coins", "hearts", "clubs", "spades", "diamonds", "discs", "disks")
"""Suits that are words for much else, before a number."""
OPENERS = _set(
    "after again against also and another as at before below beside between both but by compare cut"
    " dealt drawing drew even finally find first for found from get got had here hid if in is it"
    " just kept laid later lay like liked love major maybe meet met my near next no not now of on"
    " once only or over perhaps place pulled pulling put read reversed see seeing set since so soon"
    " still that the then this though today tonight took trump turn turned under what when where"
    " which while who why with yes yesterday"
)
"""Words that may open a sentence before a numeral; any other could be a king's name."""
