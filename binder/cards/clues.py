"""Word lists and expressions for what stands around a card's name; no decisions.

Expressions are matched where a name ends, on a short stretch, so none can run away.
Which words tell is common practice, tried on the labelled corpus of the tests.
"""

import re

_PIECE = re.IGNORECASE | re.VERBOSE
_REVERSAL = r"(?:reversed|upright|inverted|upside\ down|on\ (?:its|his|her)\ head|rev\.?|rx|r)"

TURNED = re.compile(
    rf"""[*_]*[,;:]?[ \n]\(?{_REVERSAL}(?![\w'’])
    (?![ \n](?:the|an?|its|his|her|my|our|your|their|this|that|it|into|out|itself|course)\b)""",
    _PIECE,
)
"""'reversed', 'upright', 'r' and their like, said of the card: 'reversed the van' is not."""

TURNED_PLAINLY = re.compile(
    rf"""{TURNED.pattern}(?=[*_]*\)?(?:$|[ ]?[.,;:!?)\]|/\n—–]|[ \n](?:and|or|in|at|again|then|
    here|means?|may|might|cross\w*|beneath|above|below|beside|behind|ahead|as|is|was|but|next|so
    )\b))""",
    _PIECE,
)
"""The same with nothing of weight after it; asked of small letters."""

CARD_AFTER = re.compile(r"[*_]*(?:['’]s?)?[ \n]cards?\b", _PIECE)

PLACED = re.compile(
    r"""(?:,|[ \n]\w+){0,2}[ \n](?:in|at)[ \n](?:(?:place|position)\b|(?:the|my|her|his)[ \n]
    (?:second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|eleventh|twelfth|last|final|next|
    \d{1,2}th|outcome|middle|hopes?)[ \n](?:place|position|house)\b)""",
    _PIECE,
)
"""'in place 5', 'lay in the tenth place'; 'in the first place' is too often said of anything."""

TABLE_TALK = re.compile(
    r"""[*_]*(?:[ ]*:|[ ][–—]|,?[ \n](?:
    again\b|cross(?:es|ing|ed)\b|cover(?:s|ing|ed)\b|beneath\b|above\b|below\b|behind\b|ahead\b|
    under\b|over\b|beside\b|next[ \n]to\b|opposite\b|upright\b|followed[ \n]by\b|
    on[ \n](?:the|my|her|his)[ \n](?:left|right|table)\b|
    at[ \n]the[ \n](?:root|foot|top|bottom|end|head|centre|heart)\b|
    in[ \n]the[ \n](?:middle|centre|past|future|present)\b|to[ \n]the[ \n](?:left|right)\b|
    turn(?:s|ed|ing)?[ \n]up\b|(?:never|always|often)[ \n]turn|c(?:o|a)mes?[ \n](?:up|about)\b|
    appear(?:s|ed)?\b|f(?:a|e)lls?[ \n](?:in|out|on|next|last|first|across|beside)\b|
    asks\b|says\b|means\b|shows\b|stands\b|sits\b|speaks\b|belongs\b|shares?[ \n]|looks\b|
    has[ \n](?:the|a|an|no|both|two|her|his|its)\b|is[ \n](?:the|a|my)[ \n](?:\w+[ \n])?card\b|
    as[ \n](?:the|my|a|an)[ \n](?:outcome|advice|answer|card)\b|
    (?:i|we)[ \n](?:like|love|drew|had|read|did)\b))""",
    _PIECE,
)
"""What one says of a card and seldom of the thing: enough after a name that opens a sentence."""

NOTHING_MORE = re.compile(r"[*_'’\"”)]*[ ]*(?:[.?!…]|\||\n[ ]*(?:\n|[-*+|#>]|\d+[.)])|$)", _PIECE)
"""The sentence, line or cell ends here."""

STOP = re.compile(r"[*_'’\"”]*[ ]*(?:[.,;:?!…)\]|/+\n—–]|$)", _PIECE)

ITS_OWN = re.compile(r"['’]s?[ \n][a-z]")
"""'Death's horse'."""

OF_SOMEWHERE = re.compile(
    r"(?:['’]s?)?[ \n](?:of|among)[ \n](?:the[ \n])?[A-Z]|['’]s?[ \n][A-Z][a-z]"
)
"""'Empress of Orrin', 'Star of the Sea', 'Devil's Spoon'."""

_SIGNS = "aries taurus gemini cancer leo virgo libra scorpio sagittarius capricorn aquarius pisces"
_PLANETS = "mercury venus mars jupiter saturn uranus neptune pluto"
_ASPECTS = "square trine sextile conjunct opposite opposing conjunction"

IN_THE_SKY = re.compile(
    rf"""[ \n](?:(?:(?:\w+[ \n]){{0,2}}(?:in|into|enters|entering|leaves|leaving)[ \n])?
    (?:{_SIGNS.replace(" ", "|")})\b
    |(?:{_ASPECTS.replace(" ", "|")})[ \n](?:with[ \n])?(?:{_PLANETS.replace(" ", "|")})\b
    |(?:waxing|waning|rising|rises|rose|setting|sets?|shone|shines|went[ \n]down|came[ \n]out)\b
    |signs?\b)""",
    _PIECE,
)
"""The lights in the sky, not the trumps: 'the Moon in Cancer', 'the Sun trine Mars'."""

MEASURED = re.compile(
    r"""[. ]?[ \n]?(?:ago|later|old|left|bulbs?|lamps?|led|watts?|a|per|each|of|or[ \n]so|off|pm|am|
    for|on[ \n]the|in[ \n]change|wind|and[ \n]a[ \n]half|pieces?|coins?|to|more|less|
    (?:is|was)[ \n](?:(?:not|never|too)[ \n])?(?:enough|plenty|much|little)|\d+d)\b|[%°]""",
    _PIECE,
)
"""'3w ago', '5p a pound', '10s on the timer'."""

BETWEEN = re.compile(
    rf"""[*_'’"”]*(?:[ ]\(?{_REVERSAL}\)?)?[*_'’"”]*
    (?:[ ]?[,;/+&→>|][ \n]?|[ ][–—-][ ]|[ \n]|
    [ ]?\n{{1,2}}[ ]?(?:(?:[-*+>]|\d{{1,2}}[.):])[ ])?(?:\[[ xX]\][ ])?)
    (?:(?:and|then|with|or|plus|next[ ]to|beside|crossed[ ]by|covered[ ]by|and[ ]then|followed[ ]by)
    [ \n])?(?:the[ \n]|a[ \n])?(?:\d{{1,2}}[:.)][ ])?[*_'‘"“(]*""",
    _PIECE,
)
"""Between two cards of one list: ', ', ' r; ', ' and the ', a line end with its list mark."""

OPENING = re.compile(
    r"""(?:[.!?…][\"'’”)\]]*\s|\n\n[ ]?|\n[ \t]*(?:[-*+>\#|]+|\d{1,3}[.):])[ ](?:\[[ xX]\][ ])?
    |\|[ ]?|[.:,;!?—–][ \n]?(?=['"‘“])|(?:^|\n)[^\n]{0,45}\n)['\"‘“(*_~]*$""",
    re.VERBOSE,
)
"""Searched at the end of what is before: a sentence, short line, list item or cell opens here."""

ITEM = re.compile(r"(?:\n[ \t]*(?:[-*+]|\d{1,3}[.)])[ ](?:\[[ xX]\][ ])?|\|[ ]?)[*_]*$")
"""The same of a list item or a cell alone."""

NEXT_WORD = re.compile(r"[*_]*[ \n][*_]*([^\W_][\w'’]*)")
WIDE = re.compile(r"\s\s+")
NUMERAL_AHEAD = re.compile(r"\W{1,4}(?:and )?(?:[IVX]{2,5}\b|[A-Z][a-z])")


def _set(words: str) -> frozenset[str]:
    return frozenset(words.split())


CARD_WORDS = _set("card card: cards cards: trump major")
AFTER_CARD_WORDS = _set(
    "of for the is was called my today today: again again: day day: week week: month month: morning"
    " night evening noon year year:"
)
DRAWN = _set("drew drew: drawn drawn: draw draw: pulled pulled: dealt dealt:") | {
    "crossed by",
    "covered by",
    "turned up",
    "turned over",
}
ARTICLES = _set("a an the")
PRONOUNS = _set("it him her them")
CALLED = _set("called named christened nicknamed spelt")
CALLS = _set("call calls calling name names")
"""The same, if 'her' or the like follows."""
SKY_BEFORE = _set("full new half waxing waning blue harvest") | _set(_ASPECTS)
PAGES = _set("a an one each every another whole half last first next second third this")
"""'a page of cups' in a sketch pad."""
MEASURES = _set(
    "last past next about for every within after only some over under cost costs paid pay a is was"
    " than by from to at of took takes another £ $ €"
)
CREATURES = _set("moth moths butterfly butterflies penguin penguins dragonfly crab crabs beetle")
NUMBERED_BY = _set("century centuries drip edition form corps")

NAMING = _set(
    "mr mrs miss ms dr sir dame lady lord saint st captain canon father sister brother mother"
    " uncle aunt chief professor lieutenant sergeant king queen prince princess pope north south"
    " east west evening morning new full half old blue pole harvest great little upper lower"
)
"""Before a capital word these make it part of a proper name, even where a sentence opens."""

NAMING_OF = _set("tower angel court house day lord king queen palace book temple tree")
"""'Tower of Strength', 'Court of Justice'."""

LABELS = _set(
    "act appendix article band battle book box canto catalogue chapter chapters class clause column"
    " cone course day diagram drawing drum exercise fig figure file form grade group guide house"
    " issue item king lecture leaf lesson letter level line lot meeting month no nos note number"
    " page paper para paragraph part parts phase plate point pope psalm psalms question report room"
    " row scene section series session sheet stage step table tab term type unit units vol volume"
    " volumes war week year century verse world mark model channel"
)
"""Before a numeral these say what it counts."""

APART = _set(
    "i reversed upright rx r monday tuesday wednesday thursday friday saturday sunday january"
    " february march april may june july august september october november december mon tue wed thu"
    " fri sat fire water air earth"
) | _set(f"{_SIGNS} {_PLANETS}")
"""Words written with a capital that do not make the word before them part of a name."""

OPENERS = _set(
    "after again against also and another as at before below beside between both but by cut dealt"
    " drew even for from got had here if in is it laid like major my near of on once only or over"
    " pulled read reversed see so still that the then this though today tonight trump turned under"
    " when where while why with yesterday"
)
"""Words that may open a sentence before a numeral; any other could be a king's name."""
